/** Wind on walls by EN 1991-1-4 with its recommended values; a national annex may ask otherwise. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { enPeakPressure } from "../../../equations/wind/en-peak-pressure.ts";
import { enRoughness } from "../../../equations/wind/en-roughness.ts";
import { enStripLength } from "../../../equations/wind/en-strip-length.ts";
import { enTurbulence } from "../../../equations/wind/en-turbulence.ts";
import {
  EN_DENSITY_KG_PER_M3,
  EN_SLENDEREST,
  EN_TERRAINS,
  EN_WALL,
  enFieldPull,
} from "../../../equations/wind/en-wall.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import { round } from "../held.ts";
import type { Lack, WindAnswer } from "../pack.ts";
import { buildingOf, lack, pressureWorking, terrainOf } from "../wind-fields.ts";

/** 7.2.9, note 2: no face has most of the openings. The pair as a standard prints it that took it over. */
const INSIDE = [-0.3, 0.2] as const;

export function europeWind(project: Project): WindAnswer {
  const { wind } = project.site;
  if (!wind) return { known: false, lacks: [lack("", "wind")] };
  const lacks: Lack[] = [];
  const terrain = terrainOf(wind, EN_TERRAINS, { lacks, key: "terrain-europe" });
  const building = buildingOf(wind, lacks);
  const speed = wind.speedMPerS;
  if (!speed) lacks.push(lack("speedMPerS", "speed-europe"));
  if (wind.enclosure === "partially enclosed") lacks.push(lack("enclosure", "open-europe"));
  if (building && building.heightM > EN_SLENDEREST * building.planM[0])
    lacks.push(lack("roofHeight", "too-tall-europe"));
  if (!terrain || !building || !speed || lacks.length > 0) return { known: false, lacks };

  const { europe } = catalogueWith(project.figures)["code-packs"];
  const topography = wind.topography?.value ?? 1;
  const at = { ...terrain, heightM: building.heightM };
  const peak = enPeakPressure({ ...at, speedMPerS: speed.value, densityKgPerM3: EN_DENSITY_KG_PER_M3 });
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
    `(1 + 7·${round(enTurbulence(at))}) · ½·${EN_DENSITY_KG_PER_M3}·${round(speed.value)}² · ${round(enRoughness(at))}² · ${topography} = ${round(pressurePa)}`,
  );
  const field = enFieldPull(building.heightM / building.planM[0]);
  // Whichever way the wind blows along a wall, the strips are no longer than by the greater side across it.
  const e = 1000 * enStripLength({ crosswindM: building.planM[1], heightM: building.heightM });
  return {
    known: true,
    wind: {
      pressurePa,
      strips: [
        { id: "end", toMm: e / 5, pull: EN_WALL.pull.end },
        { id: "beside", toMm: e, pull: EN_WALL.pull.beside },
        { id: "field", pull: [field, field] },
      ],
      push: EN_WALL.push,
      areasM2: EN_WALL.areasM2,
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
