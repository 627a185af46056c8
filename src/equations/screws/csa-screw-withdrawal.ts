/**
 * What a screw holds in the side grain for a millimetre of its thread, by the Canadian standard: from memory, not
 * confirmed.
 */
import { equation } from "../equation.ts";

export interface HeldThreadCanada {
  /** 59. */
  readonly coefficient: number;
  /** Mean, ovendry, of the wood. */
  readonly specificGravity: number;
  /** Over the thread (mm). */
  readonly diameterMm: number;
}

/** Withdrawal before the factors of resistance and duration (N/mm). */
export function csaScrewWithdrawal({ coefficient, specificGravity, diameterMm }: HeldThreadCanada): number {
  return coefficient * diameterMm ** 0.82 * specificGravity ** 1.77;
}

export const CSA_SCREW_WITHDRAWAL = equation({
  name: "csa-screw-withdrawal",
  formula: "coefficient · diameterMm^0.82 · specificGravity^1.77",
  inputs: [
    { key: "coefficient", unit: "1", range: [1, 200] },
    { key: "specificGravity", unit: "1", range: [0.2, 0.8] },
    { key: "diameterMm", unit: "mm", range: [2, 30] },
  ],
  result: { unit: "N/mm" },
  source: { document: "CSA O86, from memory and not confirmed" },
  work: csaScrewWithdrawal,
});
