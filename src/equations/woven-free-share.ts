/** The free share of a woven square mesh. */
import { equation } from "./equation.ts";

export interface WovenSquareMesh {
  /** Clear opening between wires (mm). */
  readonly openingMm: number;
  readonly wireMm: number;
}

/** Free area over whole area, 0 to 1. */
export function wovenFreeShare({ openingMm, wireMm }: WovenSquareMesh): number {
  return (openingMm / (openingMm + wireMm)) ** 2;
}

export const WOVEN_FREE_SHARE = equation({
  name: "woven-free-share",
  formula: "(openingMm / (openingMm + wireMm))²",
  inputs: [
    { key: "openingMm", unit: "mm", range: [0.1, 50] },
    { key: "wireMm", unit: "mm", range: [0.05, 10] },
  ],
  result: { unit: "1" },
  source: { document: "Form of ISO 9044 as printed on a wire-cloth terminology page" },
  work: wovenFreeShare,
});
