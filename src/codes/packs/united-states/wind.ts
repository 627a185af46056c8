/** Wind on the walls of low buildings by ASCE 7, chapter 30, in two editions. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { asceElevation } from "../../../equations/wind/asce-elevation.ts";
import { asceExposure } from "../../../equations/wind/asce-exposure.ts";
import { asceVelocityPressure } from "../../../equations/wind/asce-velocity-pressure.ts";
import {
  ASCE_EDITIONS,
  ASCE_LEAST_M,
  ASCE_WALL,
  type AsceTerrain,
} from "../../../equations/wind/asce-wall.ts";
import { endStripWidth } from "../../../equations/wind/end-strip-width.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import { round } from "../held.ts";
import type { Lack, WindAnswer } from "../pack.ts";
import { buildingOf, lack, pressureWorking, terrainOf } from "../wind-fields.ts";

const M_PER_FT = 0.3048;
const DIRECTIONALITY = 0.85;
/** Table 26.13-1. */
const INSIDE = { enclosed: 0.18, "partially enclosed": 0.55 } as const;
/** Higher buildings go by Figure 30.5-1. */
const TALLEST_M = 60 * M_PER_FT;
/** Least width of the end zone: 3 ft (m). */
const END_FLOOR_M = 3 * M_PER_FT;

export function unitedStatesWind(project: Project): WindAnswer {
  const { wind } = project.site;
  if (wind?.code !== "usa-asce-7-16" && wind?.code !== "usa-asce-7-22")
    return { known: false, lacks: [lack("", "wind")] };
  const edition = ASCE_EDITIONS[wind.code];
  const lacks: Lack[] = [];
  const row = terrainOf<AsceTerrain>(wind, edition.terrains, { lacks, key: "terrain-usa" });
  const building = buildingOf(wind, lacks);
  const speed = wind.speedMPerS;
  if (!speed) lacks.push(lack("speedMPerS", "speed-usa"));
  if (building && building.heightM > TALLEST_M) lacks.push(lack("roofHeight", "too-tall-usa"));
  if (!row || !building || !speed || lacks.length > 0) return { known: false, lacks };

  const { unitedStates } = catalogueWith(project.figures)["code-packs"];
  const exposure = asceExposure({
    alpha: row.alpha,
    gradientM: row.gradientM,
    leastHeightM: row.leastHeightM,
    factor: edition.factor,
    heightM: Math.max(building.heightM, ASCE_LEAST_M),
  });
  const topography = wind.topography?.value ?? 1;
  // Ground at the sea: higher ground is never less.
  const pressurePa = asceVelocityPressure({
    speedMPerS: speed.value,
    exposure,
    topography,
    directionality: DIRECTIONALITY,
    elevation: asceElevation({ altitudeM: 0 }),
  });
  const inside = INSIDE[wind.enclosure ?? "enclosed"];
  const { working, basis } = pressureWorking(
    "0.613 · Kz · Kzt · Kd · V²",
    [
      { symbol: "V", meaning: "gust-speed", value: speed.value, unit: "m/s", basis: speed.basis },
      { symbol: "Kz", meaning: "exposure", value: exposure, unit: "1", basis: row.basis },
      {
        symbol: "Kzt",
        meaning: "topography",
        value: topography,
        unit: "1",
        basis: wind.topography?.basis ?? "typical",
      },
      { symbol: "Kd", meaning: "directionality", value: DIRECTIONALITY, unit: "1", basis: "given" },
      {
        symbol: "GCpi",
        meaning: "inside",
        value: inside,
        unit: "1",
        basis: wind.enclosure ? "given" : "typical",
      },
    ],
    `0.613 · ${round(exposure)} · ${topography} · ${DIRECTIONALITY} · ${round(speed.value)}² = ${round(pressurePa)}`,
  );
  const endMm =
    1000 * endStripWidth({ leastWidthM: building.planM[0], heightM: building.heightM, floorM: END_FLOOR_M });
  return {
    known: true,
    wind: {
      pressurePa,
      strips: [
        { id: "end", toMm: endMm, pull: ASCE_WALL.pull.end },
        { id: "field", pull: ASCE_WALL.pull.field },
      ],
      push: ASCE_WALL.push,
      areasM2: ASCE_WALL.areasM2,
      inside: [-inside, inside],
      leastPa: codeValue(unitedStates.leastPressure),
      strength: codeValue(unitedStates.windShare),
      sag: codeValue(unitedStates.sagShare),
      dead: { value: 1, basis: "given", figures: [] },
      basis,
      working,
      source: { kind: "document", document: edition.document, clause: "Equation 26.10-1, Figure 30.3-1" },
    },
  };
}
