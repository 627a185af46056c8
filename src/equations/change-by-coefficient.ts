/** How a board's width follows its moisture content, by the coefficient of dimensional change. */
import { equation } from "./equation.ts";

export interface MoistureChange {
  /** Width at the first moisture content (mm). */
  readonly widthMm: number;
  /** Share of the width for one point of moisture content: tangential for flat-sawn boards, radial for quarter-sawn. */
  readonly coefficientPerPercent: number;
  /** Moisture content before and after (%); the coefficients are meant for 6 to 14 %. */
  readonly fromPercent: number;
  readonly toPercent: number;
}

/** Change of width (mm): positive when the board grows. */
export function changeByCoefficient(change: MoistureChange): number {
  return change.widthMm * change.coefficientPerPercent * (change.toPercent - change.fromPercent);
}

export const CHANGE_BY_COEFFICIENT = equation({
  name: "change-by-coefficient",
  formula: "widthMm · coefficientPerPercent · (toPercent − fromPercent)",
  inputs: [
    { key: "widthMm", unit: "mm", range: [0, 1000] },
    { key: "coefficientPerPercent", unit: "1/%", range: [0, 0.01] },
    { key: "fromPercent", unit: "%", range: [6, 14] },
    { key: "toPercent", unit: "%", range: [6, 14] },
  ],
  result: { unit: "mm" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
    clause: "Chapter 13, dimensional change",
  },
  work: changeByCoefficient,
});
