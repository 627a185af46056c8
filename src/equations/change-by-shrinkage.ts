/** How a board's width follows its moisture content over the whole range, by its shrinkage from green to dry. */
import { equation } from "./equation.ts";

export interface ShrinkageChange {
  /** Width at the first moisture content (mm). */
  readonly widthMm: number;
  /** Green to ovendry, percent of the green width: tangential for flat-sawn boards. */
  readonly shrinkagePercent: number;
  /** Moisture content above which wood no longer moves: about 30 %, for some cedars about 22 %. */
  readonly saturationPercent: number;
  /** Moisture content before and after (%). */
  readonly fromPercent: number;
  readonly toPercent: number;
}

/** Change of width (mm): positive when the board grows. */
export function changeByShrinkage(change: ShrinkageChange): number {
  return (
    change.widthMm * (shareOfGreen(change, change.toPercent) / shareOfGreen(change, change.fromPercent) - 1)
  );
}

function shareOfGreen(change: ShrinkageChange, moisturePercent: number): number {
  const moisture = Math.min(moisturePercent, change.saturationPercent);
  return 1 - (change.shrinkagePercent / 100) * (1 - moisture / change.saturationPercent);
}

export const CHANGE_BY_SHRINKAGE = equation({
  name: "change-by-shrinkage",
  formula:
    "widthMm · ([1 − S(1 − toPercent/saturationPercent)]/[1 − S(1 − fromPercent/saturationPercent)] − 1), S = shrinkagePercent/100",
  inputs: [
    { key: "widthMm", unit: "mm", range: [0, 1000] },
    { key: "shrinkagePercent", unit: "%", range: [0, 20] },
    { key: "saturationPercent", unit: "%", range: [18, 35] },
    { key: "fromPercent", unit: "%", range: [0, 200] },
    { key: "toPercent", unit: "%", range: [0, 200] },
  ],
  result: { unit: "mm" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
    clause: "Equation 4-9, taken at two moisture contents",
  },
  work: changeByShrinkage,
});
