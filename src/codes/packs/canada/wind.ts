/** Wind on the walls of low buildings by the National Building Code of Canada 2020, 4.1.7. */
import { catalogueWith } from "../../../catalogue/own-figures.ts";
import { endStripWidth } from "../../../equations/wind/end-strip-width.ts";
import { nbcExposure } from "../../../equations/wind/nbc-exposure.ts";
import { nbcPressure } from "../../../equations/wind/nbc-pressure.ts";
import { NBC_TERRAINS, NBC_WALL } from "../../../equations/wind/nbc-wall.ts";
import type { Project } from "../../../project/schema/project.ts";
import { codeValue } from "../../rule-value.ts";
import { round } from "../held.ts";
import type { Lack, WindAnswer } from "../pack.ts";
import { buildingOf, lack, pressureWorking, terrainOf } from "../wind-fields.ts";

/** Table 4.1.7.3, strength. */
const IMPORTANCE = { low: 0.8, normal: 1, high: 1.15 } as const;

/** 4.1.7.6: taller ones, or ones taller than they are deep, go by other figures. */
const TALLEST_M = 20;
/** Gust inside, and coefficients of buildings whose openings are shut in a storm. */
const GUST_INSIDE = 2;
const INSIDE = [-0.45, 0.3] as const;
/** Least width of the end zone (m). */
const END_FLOOR_M = 1;

export function canadaWind(project: Project): WindAnswer {
  const { wind, windPressure1in50Pa: hourly } = project.site;
  if (!wind) return { known: false, lacks: [lack("", "wind")] };
  const lacks: Lack[] = [];
  const terrain = terrainOf(wind, NBC_TERRAINS, { lacks, key: "terrain-canada" });
  const building = buildingOf(wind, lacks);
  if (!hourly) lacks.push(lack("/site/windPressure1in50Pa", "hourly-pressure"));
  if (building && (building.heightM > TALLEST_M || building.heightM >= building.planM[0]))
    lacks.push(lack("roofHeight", "too-tall-canada"));
  if (!terrain || !building || !hourly || lacks.length > 0) return { known: false, lacks };

  const { canada } = catalogueWith(project.figures)["code-packs"];
  const exposure = nbcExposure({ ...terrain, heightM: building.heightM });
  const importance = IMPORTANCE[wind.importance ?? "normal"];
  const topography = wind.topography?.value ?? 1;
  const pressurePa = nbcPressure({ importance, hourlyPa: hourly.value, exposure, topography });
  const partly = codeValue(canada.partlyEnclosed);
  const partlyEnclosed = wind.enclosure === "partially enclosed";
  const inside = partlyEnclosed ? ([-partly.value, partly.value] as const) : INSIDE;
  const { working, basis } = pressureWorking(
    "q · I · Ce · Ct",
    [
      { symbol: "q", meaning: "hourly-pressure", value: hourly.value, unit: "Pa", basis: hourly.basis },
      {
        symbol: "I",
        meaning: "importance",
        value: importance,
        unit: "1",
        basis: wind.importance ? "given" : "typical",
      },
      { symbol: "Ce", meaning: "exposure", value: exposure, unit: "1", basis: "derived" },
      {
        symbol: "Ct",
        meaning: "topography",
        value: topography,
        unit: "1",
        basis: wind.topography?.basis ?? "typical",
      },
      {
        symbol: "Cpi",
        meaning: "inside",
        value: inside[1],
        unit: "1",
        basis: partlyEnclosed ? partly.basis : wind.enclosure ? "given" : "typical",
      },
    ],
    `${round(hourly.value)} · ${importance} · ${round(exposure)} · ${topography} = ${round(pressurePa)}`,
  );
  const endMm =
    1000 * endStripWidth({ leastWidthM: building.planM[0], heightM: building.heightM, floorM: END_FLOOR_M });
  const sagImportance = codeValue(canada.sagImportance);
  return {
    known: true,
    wind: {
      pressurePa,
      strips: [
        { id: "end", toMm: endMm, pull: NBC_WALL.pull.end },
        { id: "field", pull: NBC_WALL.pull.field },
      ],
      push: NBC_WALL.push,
      areasM2: NBC_WALL.areasM2,
      inside: [GUST_INSIDE * inside[0], GUST_INSIDE * inside[1]],
      leastPa: undefined,
      strength: codeValue(canada.windFactor),
      sag: { ...sagImportance, value: sagImportance.value / importance },
      dead: codeValue(canada.deadFactor),
      basis,
      working,
      source: {
        kind: "document",
        document: "National Building Code of Canada, 2020, Division B",
        clause: "4.1.7.3, Figure 4.1.7.6.-B",
      },
    },
  };
}
