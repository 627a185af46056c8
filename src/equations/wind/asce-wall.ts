/** Walls of low buildings in the United States: what stands in the tables by exposure and by strip. */
import { equation } from "../equation.ts";
import { asceExposure } from "./asce-exposure.ts";
import { twoStripCoefficient, type WallTable } from "./wall-table.ts";

const M_PER_FT = 0.3048;

/** Figure 30.3-1: gust and pressure, from 10 to 500 ft². */
export const ASCE_WALL = {
  pull: { end: [-1.4, -0.8], field: [-1.1, -0.8] },
  push: [1, 0.7],
  areasM2: [10 * M_PER_FT ** 2, 500 * M_PER_FT ** 2],
} as const satisfies WallTable;

export interface AsceTerrain {
  readonly alpha: number;
  readonly gradientM: number;
  /** Height below which the coefficient stays (m). */
  readonly leastHeightM: number;
  readonly basis: "derived" | "memory";
}

const terrain = (
  alpha: number,
  gradientFt: number,
  { leastFt = 15, basis = "derived" }: { leastFt?: number; basis?: AsceTerrain["basis"] } = {},
): AsceTerrain => ({
  basis,
  alpha,
  gradientM: gradientFt * M_PER_FT,
  leastHeightM: leastFt * M_PER_FT,
});

/**
 * Table 26.10-1 and its notes. For cladding in exposure B the coefficient stays from 30 ft down, as the edition of 2016 prints; it is kept in
 * that of 2022, where it is never the lesser. Exposure B of 2022 is not confirmed: public scripts disagree.
 */
export const ASCE_EDITIONS = {
  "usa-asce-7-16": {
    document: "ASCE 7-16",
    factor: 2.01,
    terrains: { B: terrain(7, 1200, { leastFt: 30 }), C: terrain(9.5, 900), D: terrain(11.5, 700) },
  },
  "usa-asce-7-22": {
    document: "ASCE 7-22",
    factor: 2.41,
    terrains: {
      B: terrain(7.5, 3280, { leastFt: 30, basis: "memory" }),
      C: terrain(9.8, 2460),
      D: terrain(11.5, 1935),
    },
  },
} as const;

/** Lower ones count as so high (m). */
export const ASCE_LEAST_M = 15 * M_PER_FT;

const YEARS = { 2016: "usa-asce-7-16", 2022: "usa-asce-7-22" } as const;
const LETTERS = ["B", "C", "D"] as const;

export const ASCE_WALL_COEFFICIENT = twoStripCoefficient({
  name: "asce-wall-coefficient",
  table: ASCE_WALL,
  source: { document: "ASCE 7-16 and 7-22", clause: "Figure 30.3-1" },
});

export const ASCE_TERRAIN = equation({
  name: "asce-terrain",
  formula:
    "asce-exposure at heightM with the table’s figures of that edition: exposure B where exposure is 1, C where 2, D where 3",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 150] },
    { key: "edition", unit: "1", range: [2016, 2022] },
    { key: "exposure", unit: "1", range: [1, 3] },
  ],
  together: {
    keys: ["edition", "exposure"],
    condition: "edition: 2016 or 2022; exposure: 1, 2 or 3",
    holds: ({ edition, exposure }) => edition in YEARS && LETTERS[exposure - 1] !== undefined,
  },
  result: { unit: "1" },
  source: { document: "ASCE 7-16 and 7-22", clause: "Table 26.10-1; exposure B of 2022 from memory" },
  work: ({ heightM, edition, exposure }) => {
    const { factor, terrains } = ASCE_EDITIONS[YEARS[edition as keyof typeof YEARS]];
    const { alpha, gradientM, leastHeightM } = terrains[LETTERS[exposure - 1] ?? "B"];
    return asceExposure({ alpha, gradientM, leastHeightM, factor, heightM: Math.max(heightM, ASCE_LEAST_M) });
  },
});
