/** Width of the strip at the end of a wall where wind pulls hardest, in North American codes. */
import { equation } from "../equation.ts";

export interface WallOfBuilding {
  /** Lesser dimension of the building in plan (m). */
  readonly leastWidthM: number;
  /** Reference height of the building (m). */
  readonly heightM: number;
  /** Never less than this: 1 m in Canada, 0.9 m (3 ft) in the United States. */
  readonly floorM: number;
}

/** Width (m). */
export function endStripWidth({ leastWidthM, heightM, floorM }: WallOfBuilding): number {
  return Math.max(Math.min(0.1 * leastWidthM, 0.4 * heightM), 0.04 * leastWidthM, floorM);
}

export const END_STRIP_WIDTH = equation({
  name: "end-strip-width",
  formula: "max(min(0.1·leastWidthM, 0.4·heightM), 0.04·leastWidthM, floorM)",
  inputs: [
    { key: "leastWidthM", unit: "m", range: [1, 500] },
    { key: "heightM", unit: "m", range: [1, 100] },
    { key: "floorM", unit: "m", range: [0.1, 5] },
  ],
  result: { unit: "m" },
  source: {
    document: "National Building Code of Canada, 2020, Division B; ASCE 7",
    clause: "4.1.7.6, z; 30.3, a, as printed in a structural handbook",
  },
  work: endStripWidth,
});
