/** P033: what driven rain a face takes beside the others, by the year's rain and the prevailing wind. */
import { drivingRainIndex } from "../equations/rain/driving-rain-index.ts";
import { type Basis, type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { compared, input, written } from "./working.ts";

export function drivenRain(context: ProofContext): Finding[] {
  const { climate } = context.project.site;
  const { moderate, severe, basis, source } = context.demands.rainGrades;
  const rain = climate?.rainfallMm ?? climate?.precipitationMm;
  const wind = climate?.wind;
  if (!rain || !wind) {
    return [
      finding({
        code: "P033",
        outcome: "cannot evaluate",
        where: { path: wind ? "/site/climate/rainfallMm" : "/site/climate/wind" },
        says: message("proof.rain.unknown"),
        hint: message("proof.rain.enter"),
        source,
      }),
    ];
  }
  const rainMm = rain.values.reduce((sum, month) => sum + month, 0);
  const index = drivingRainIndex({ rainMm, windMPerS: wind.meanMPerS });
  const rainBasis: Basis = climate?.rainfallMm ? rain.basis : "typical";
  return context.facade.faces.flatMap(({ id, azimuthDeg, zones }) => {
    // A soffit looks to no side, and driven rain passes under it.
    if (azimuthDeg === undefined || zones.length === 0) return [];
    const share = Math.max(0, Math.cos(((azimuthDeg - wind.fromDeg) * Math.PI) / 180));
    const demand = index * share;
    const grade = demand >= severe ? "severe" : demand >= moderate ? "moderate" : "sheltered";
    const path = `/faces/${context.project.faces.findIndex((face) => face.id === id)}`;
    return [
      finding({
        code: "P033",
        outcome: grade === "sheltered" ? "pass" : "attention",
        where: { path, face: id },
        says: message(`proof.rain.${grade}`, {
          index: demand,
          share: share * 100,
          from: wind.fromDeg,
          whole: index,
        }),
        ...(grade === "sheltered" ? {} : { hint: message("proof.rain.membrane") }),
        ...compared("at most", {
          demand,
          limit: grade === "severe" ? severe : moderate,
          unit: "m²/s",
        }),
        working: {
          formula: "I_w = R/1000 · v · max(0, cos(A − D))",
          inputs: [
            input("R", { meaning: "year-rain", value: rainMm, unit: "mm", basis: rainBasis }),
            input("v", { meaning: "mean-wind", value: wind.meanMPerS, unit: "m/s", basis: wind.basis }),
            input("A", { meaning: "face-azimuth", value: azimuthDeg, unit: "°", basis: "given" }),
            input("D", { meaning: "wind-from", value: wind.fromDeg, unit: "°", basis: wind.basis }),
            input("I_1", { meaning: "rain-moderate", value: moderate, unit: "m²/s", basis }),
          ],
          substituted: `${written(rainMm / 1000, 3)} × ${written(wind.meanMPerS)} × ${written(share, 2)} = ${written(demand, 2)}`,
        },
        source,
      }),
    ];
  });
}
