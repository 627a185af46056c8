/**
 * What a wood screw holds in the side grain for a millimetre of its thread, by the United States’ standard.
 */
import { equation } from "../equation.ts";

export interface HeldThread {
  /** Of the wood: ovendry mass, ovendry volume. */
  readonly specificGravity: number;
  /** Over the thread (mm). */
  readonly diameterMm: number;
}

/** Allowable withdrawal, ten years’ load (N/mm). */
export function ndsScrewWithdrawal({ specificGravity, diameterMm }: HeldThread): number {
  return 2850 * specificGravity ** 2 * (diameterMm / 25.4) * 0.17512684;
}

export const NDS_SCREW_WITHDRAWAL = equation({
  name: "nds-screw-withdrawal",
  formula: "2850 · specificGravity² · (diameterMm/25.4) · 0.17512684",
  inputs: [
    { key: "specificGravity", unit: "1", range: [0.2, 0.8] },
    { key: "diameterMm", unit: "mm", range: [2, 10] },
  ],
  result: { unit: "N/mm" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Equation 12.2-2",
  },
  work: ndsScrewWithdrawal,
});
