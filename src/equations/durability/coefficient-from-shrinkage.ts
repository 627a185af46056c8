/** The coefficient of dimensional change that belongs to a shrinkage from green to dry. */
import { equation } from "../equation.ts";

export interface GreenToDry {
  /** Green to ovendry (%). */
  readonly shrinkagePercent: number;
  /** Moisture content above which the wood no longer moves (%). */
  readonly saturationPercent: number;
}

/** Coefficient (1/%). */
export function coefficientFromShrinkage({ shrinkagePercent, saturationPercent }: GreenToDry): number {
  return shrinkagePercent / (100 * saturationPercent - shrinkagePercent * (saturationPercent - 10));
}

export const COEFFICIENT_FROM_SHRINKAGE = equation({
  name: "coefficient-from-shrinkage",
  formula: "shrinkagePercent / [100·saturationPercent − shrinkagePercent·(saturationPercent − 10)]",
  inputs: [
    { key: "shrinkagePercent", unit: "%", range: [0, 20] },
    { key: "saturationPercent", unit: "%", range: [18, 35] },
  ],
  result: { unit: "1/%" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
    clause: "Chapters 4 and 13: the link between Tables 4-3 and 13-5",
  },
  work: coefficientFromShrinkage,
});
