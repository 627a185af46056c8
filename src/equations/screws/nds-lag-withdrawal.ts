/** What a lag screw holds in the side grain for a millimetre of its thread, by the United States’ standard. */
import { equation } from "../equation.ts";

export interface HeldLag {
  /** Of the wood: ovendry mass, ovendry volume. */
  readonly specificGravity: number;
  /** Of the shank (mm). */
  readonly diameterMm: number;
}

/** Allowable withdrawal, ten years’ load (N/mm). */
export function ndsLagWithdrawal({ specificGravity, diameterMm }: HeldLag): number {
  return 1800 * specificGravity ** 1.5 * (diameterMm / 25.4) ** 0.75 * 0.17512684;
}

export const NDS_LAG_WITHDRAWAL = equation({
  name: "nds-lag-withdrawal",
  formula: "1800 · specificGravity^1.5 · (diameterMm/25.4)^0.75 · 0.17512684",
  inputs: [
    { key: "specificGravity", unit: "1", range: [0.2, 0.8] },
    { key: "diameterMm", unit: "mm", range: [5, 35] },
  ],
  result: { unit: "N/mm" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Equation 12.2-1",
  },
  work: ndsLagWithdrawal,
});
