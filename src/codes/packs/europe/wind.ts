/** Wind on walls by EN 1991-1-4 with its recommended values; a national annex may ask otherwise. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { enPeakPressure } from "../../../equations/wind/en-peak-pressure.ts";
import { enRoughness } from "../../../equations/wind/en-roughness.ts";
import { enStripLength } from "../../../equations/wind/en-strip-length.ts";
import { enTurbulence } from "../../../equations/wind/en-turbulence.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import { round } from "../held.ts";
import type { Lack, WindAnswer } from "../pack.ts";
import { buildingOf, lack, pressureWorking, terrainOf } from "../wind-fields.ts";

/** Table 4.1. */
const TERRAINS = {
  "0": { roughnessM: 0.003, leastHeightM: 1 },
  I: { roughnessM: 0.01, leastHeightM: 1 },
  II: { roughnessM: 0.05, leastHeightM: 2 },
  III: { roughnessM: 0.3, leastHeightM: 5 },
  IV: { roughnessM: 1, leastHeightM: 10 },
} as const;

const DENSITY_KG_PER_M3 = 1.25;
/** Table 7.1 and Figure 7.2: strips A and B of a wall beside the wind; the push of D, for walls higher than a quarter of the depth. */
const A = [-1.4, -1.2] as const;
const B = [-1.1, -0.8] as const;
/** Past strip B: C pulls by 0.5, and a wall in the lee, E, by 0.5 to 0.7 as the building grows from as high as deep to five times that. */
const FIELD = { low: 0.5, slender: 0.7 } as const;
const PUSH = [1, 0.8] as const;
const AREAS_M2 = [1, 10] as const;
/** 7.2.9, note 2: no face has most of the openings. The pair as a standard prints it that took it over. */
const INSIDE = [-0.3, 0.2] as const;
/** Table 7.1 stands for walls up to five times as high as the building is deep. */
const SLENDEREST = 5;
export function europeWind(project: Project): WindAnswer {
  const { wind } = project.site;
  if (!wind) return { known: false, lacks: [lack("", "wind")] };
  const lacks: Lack[] = [];
  const terrain = terrainOf(wind, TERRAINS, { lacks, key: "terrain-europe" });
  const building = buildingOf(wind, lacks);
  const speed = wind.speedMPerS;
  if (!speed) lacks.push(lack("speedMPerS", "speed-europe"));
  if (wind.enclosure === "partially enclosed") lacks.push(lack("enclosure", "open-europe"));
  if (building && building.heightM > SLENDEREST * building.planM[0])
    lacks.push(lack("roofHeight", "too-tall-europe"));
  if (!terrain || !building || !speed || lacks.length > 0) return { known: false, lacks };

  const { europe } = catalogueWith(project.figures)["code-packs"];
  const topography = wind.topography?.value ?? 1;
  const at = { ...terrain, heightM: building.heightM };
  const peak = enPeakPressure({ ...at, speedMPerS: speed.value, densityKgPerM3: DENSITY_KG_PER_M3 });
  const pressurePa = peak * topography;
  const { working, basis } = pressureWorking(
    "(1 + 7·Iv) · ½·ρ·vb² · cr² · ct",
    [
      { symbol: "vb", meaning: "basic-speed", value: speed.value, unit: "m/s", basis: speed.basis },
      { symbol: "cr", meaning: "roughness", value: enRoughness(at), unit: "1", basis: "derived" },
      { symbol: "Iv", meaning: "turbulence", value: enTurbulence(at), unit: "1", basis: "derived" },
      {
        symbol: "ct",
        meaning: "topography",
        value: topography,
        unit: "1",
        basis: wind.topography?.basis ?? "typical",
      },
      {
        symbol: "cpi",
        meaning: "inside",
        value: INSIDE[1],
        unit: "1",
        basis: wind.enclosure ? "given" : "typical",
      },
    ],
    `(1 + 7·${round(enTurbulence(at))}) · ½·${DENSITY_KG_PER_M3}·${round(speed.value)}² · ${round(enRoughness(at))}² · ${topography} = ${round(pressurePa)}`,
  );
  const slender = Math.max(0, building.heightM / building.planM[0] - 1) / (SLENDEREST - 1);
  const field = -(FIELD.low + (FIELD.slender - FIELD.low) * slender);
  // Whichever way the wind blows along a wall, the strips are no longer than by the greater side across it.
  const e = 1000 * enStripLength({ crosswindM: building.planM[1], heightM: building.heightM });
  return {
    known: true,
    wind: {
      pressurePa,
      strips: [
        { id: "end", toMm: e / 5, pull: A },
        { id: "beside", toMm: e, pull: B },
        { id: "field", pull: [field, field] },
      ],
      push: PUSH,
      areasM2: AREAS_M2,
      inside: INSIDE,
      leastPa: undefined,
      strength: codeValue(europe.windFactor),
      sag: { value: 1, basis: "given", figures: [] },
      dead: codeValue(europe.deadFactor),
      basis,
      working,
      source: {
        kind: "document",
        document: "EN 1991-1-4, 2005 with A1",
        clause: "4.5, 7.2.2, recommended values",
      },
    },
  };
}
