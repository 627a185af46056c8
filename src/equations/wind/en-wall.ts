/** Walls in Europe: what stands in the tables by terrain and by strip, with the values that the standard recommends. */
import { equation } from "../equation.ts";
import { enPeakPressure } from "./en-peak-pressure.ts";
import { fromTable, isYesOrNo, type WallTable } from "./wall-table.ts";

/** Past strip B: C pulls by 0.5, and a wall in the lee, E, by 0.5 to 0.7 as the building grows from as high as deep to five times that. */
const FIELD = { low: 0.5, slender: 0.7 } as const;
/** Table 7.1 stands for walls up to so many times as high as the building is deep. */
export const EN_SLENDEREST = 5;

/** Table 7.1 and Figure 7.2: strips A and B of a wall beside the wind; the push of D, for walls higher than a quarter of the depth. */
export const EN_WALL = {
  pull: { end: [-1.4, -1.2], beside: [-1.1, -0.8] },
  push: [1, 0.8],
  areasM2: [1, 10],
} as const satisfies WallTable;

/** Table 4.1. */
export const EN_TERRAINS = {
  "0": { roughnessM: 0.003, leastHeightM: 1 },
  I: { roughnessM: 0.01, leastHeightM: 1 },
  II: { roughnessM: 0.05, leastHeightM: 2 },
  III: { roughnessM: 0.3, leastHeightM: 5 },
  IV: { roughnessM: 1, leastHeightM: 10 },
} as const;

const CATEGORIES = ["0", "I", "II", "III", "IV"] as const;

export const EN_DENSITY_KG_PER_M3 = 1.25;

/** Pull past the strips, by how many times as high as deep the building is. */
export function enFieldPull(slenderness: number): number {
  const share = Math.max(0, slenderness - 1) / (EN_SLENDEREST - 1);
  return -(FIELD.low + (FIELD.slender - FIELD.low) * share);
}

export const EN_WALL_COEFFICIENT = equation({
  name: "en-wall-coefficient",
  formula:
    "the table’s line by lg areaM2: pull of strip A where strip is 1, of B where it is 2, past them where it is 3, by slenderness; push of D where pushing is 1",
  inputs: [
    { key: "areaM2", unit: "m²", range: [0, 10000] },
    { key: "strip", unit: "1", range: [1, 3] },
    { key: "pushing", unit: "1", range: [0, 1] },
    { key: "slenderness", unit: "1", range: [0.25, EN_SLENDEREST] },
  ],
  together: {
    keys: ["strip", "pushing"],
    condition: "strip: 1, 2 or 3; pushing: 0 or 1",
    holds: ({ strip, pushing }) => Number.isInteger(strip) && isYesOrNo(pushing),
  },
  result: { unit: "1" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "Table 7.1, Figures 7.2 and 7.5" },
  work: ({ areaM2, strip, pushing, slenderness }) => {
    const { pull, push, areasM2 } = EN_WALL;
    if (pushing === 0 && strip === 3) return enFieldPull(slenderness);
    return fromTable(areasM2, pushing === 1 ? push : strip === 1 ? pull.end : pull.beside, areaM2);
  },
});

export const EN_TERRAIN = equation({
  name: "en-terrain",
  formula:
    "en-peak-pressure of speedMPerS at heightM with the table’s figures of the terrain’s category, and air of 1.25 kg/m³",
  inputs: [
    { key: "speedMPerS", unit: "m/s", range: [0, 60] },
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "category", unit: "1", range: [0, 4] },
  ],
  together: {
    keys: ["category"],
    condition: "category: 0, 1, 2, 3 or 4",
    holds: ({ category }) => Number.isInteger(category),
  },
  result: { unit: "Pa" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.5, Table 4.1, recommended values" },
  work: ({ speedMPerS, heightM, category }) =>
    enPeakPressure({
      ...EN_TERRAINS[CATEGORIES[category] ?? "IV"],
      heightM,
      speedMPerS,
      densityKgPerM3: EN_DENSITY_KG_PER_M3,
    }),
});
