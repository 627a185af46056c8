/** What a plain nail holds in the side grain for a millimetre in the wood, by the United States’ standard. */
import { equation } from "../equation.ts";

export interface HeldNail {
  /** Of the wood: ovendry mass, ovendry volume. */
  readonly specificGravity: number;
  /** Of the shank (mm). */
  readonly diameterMm: number;
}

/** Allowable withdrawal, ten years’ load (N/mm). */
export function ndsNailWithdrawal({ specificGravity, diameterMm }: HeldNail): number {
  return 1380 * specificGravity ** 2.5 * (diameterMm / 25.4) * 0.17512684;
}

export const NDS_NAIL_WITHDRAWAL = equation({
  name: "nds-nail-withdrawal",
  formula: "1380 · specificGravity^2.5 · (diameterMm/25.4) · 0.17512684",
  inputs: [
    { key: "specificGravity", unit: "1", range: [0.2, 0.8] },
    { key: "diameterMm", unit: "mm", range: [1, 10] },
  ],
  result: { unit: "N/mm" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Equation 12.2-3",
  },
  work: ndsNailWithdrawal,
});
