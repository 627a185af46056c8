/** A year of weather in the EPW format as a clear year would be written down, and the site it is of. */
import { clearSky } from "../../src/equations/light/clear-sky.ts";
import { extraterrestrialBeam } from "../../src/equations/light/extraterrestrial-beam.ts";
import { sunDirection } from "../../src/equations/light/sun-direction.ts";
import type { LightSite } from "../../src/proof/light/model.ts";

export const SITE: LightSite = {
  latitudeDeg: 46.8,
  longitudeDeg: -71.4,
  air: { pressureMbar: 1013.25, ozoneCm: 0.3, waterCm: 1.5, haze380: 0.15, haze500: 0.1, forwardShare: 0.85 },
  solarConstantWPerM2: 1367,
  groundShare: new Array<number>(12).fill(0.2),
  groundUvShare: new Array<number>(12).fill(0.05),
  beamUvShare: 0.0339,
  skyUvShare: 0.138,
};
const ZONE = -5;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A clear year as a weather station would write it down, an hour a line. */
export function clearEpw(change: (cells: string[], line: number) => string[] = (cells) => cells): string {
  const lines = [`LOCATION,Quebec,QC,CAN,test,0,${SITE.latitudeDeg},${SITE.longitudeDeg},${ZONE},70.0`];
  for (let i = 1; i < 8; i++) lines.push(`HEADING ${i}`);
  let dayOfYear = 0;
  for (const [month, days] of DAYS.entries()) {
    for (let day = 1; day <= days; day++, dayOfYear++) {
      for (let hour = 1; hour <= 24; hour++) {
        const light = hourOf(dayOfYear, hour);
        const cells = ["2025", String(month + 1), String(day), String(hour), "60", "flags"];
        while (cells.length < 13) cells.push("0");
        cells.push(...light.map((value) => value.toFixed(2)), "0");
        lines.push(change(cells, lines.length + 1).join(","));
      }
    }
  }
  return lines.join("\r\n");
}

/** Level, beam and sky in the hour that ends at `hour` (Wh/m²). */
export function hourOf(dayOfYear: number, hour: number): [number, number, number] {
  const parts = 6;
  const sum: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < parts; k++) {
    const at = hour - 1 + (k + 0.5) / parts - ZONE;
    const sun = sunDirection({ ...SITE, daysFromJ2000: 9131.5 + dayOfYear + at / 24 });
    if (sun.up <= 0) continue;
    const light = clearSky({
      ...SITE.air,
      zenithDeg: (Math.acos(sun.up) * 180) / Math.PI,
      outsideWPerM2: extraterrestrialBeam({ dayOfYear: dayOfYear + 1, solarConstantWPerM2: 1367 }),
      groundShare: 0.2,
    });
    sum[0] += light.level / parts;
    sum[1] += light.beam / parts;
    sum[2] += light.sky / parts;
  }
  return sum;
}
