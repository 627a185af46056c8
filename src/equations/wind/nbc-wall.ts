/** Walls of low buildings in Canada: what stands in the tables by terrain and by strip. */
import { equation } from "../equation.ts";
import { nbcExposure } from "./nbc-exposure.ts";
import { isYesOrNo, twoStripCoefficient, type WallTable } from "./wall-table.ts";

/** Figure 4.1.7.6.-B: products of gust and pressure; the push of a small area is printed as 1.8, rounded up from 1.75. */
export const NBC_WALL = {
  pull: { end: [-2.1, -1.5], field: [-1.8, -1.5] },
  push: [1.8, 1.3],
  areasM2: [1, 50],
} as const satisfies WallTable;

/** 4.1.7.3.(5). */
export const NBC_TERRAINS = {
  open: { factor: 1, referenceM: 10, exponent: 0.2, least: 0.9 },
  rough: { factor: 0.7, referenceM: 12, exponent: 0.3, least: 0.7 },
} as const;

export const NBC_WALL_COEFFICIENT = twoStripCoefficient({
  name: "nbc-wall-coefficient",
  table: NBC_WALL,
  source: {
    document: "National Building Code of Canada, 2020, Division B",
    clause: "Figure 4.1.7.6.-B",
  },
});

export const NBC_TERRAIN = equation({
  name: "nbc-terrain",
  formula: "nbc-exposure at heightM with the figures of open terrain, or of rough where rough is 1",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "rough", unit: "1", range: [0, 1] },
  ],
  together: { keys: ["rough"], condition: "rough: 0 or 1", holds: ({ rough }) => isYesOrNo(rough) },
  result: { unit: "1" },
  source: {
    document: "National Building Code of Canada, 2020, Division B",
    clause: "4.1.7.3.(5), as coded in several public scripts",
  },
  work: ({ heightM, rough }) => nbcExposure({ heightM, ...NBC_TERRAINS[rough === 1 ? "rough" : "open"] }),
});
