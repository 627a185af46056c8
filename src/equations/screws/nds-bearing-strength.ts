/** What wood bears under a thin dowel, by the United States’ standard. */
import { equation } from "../equation.ts";

export interface BearingWood {
  /** Of the wood: ovendry mass, ovendry volume. */
  readonly specificGravity: number;
}

/** Bearing strength (MPa). */
export function ndsBearingStrength({ specificGravity }: BearingWood): number {
  return 16600 * specificGravity ** 1.84 * 0.0068947573;
}

export const NDS_BEARING_STRENGTH = equation({
  name: "nds-bearing-strength",
  formula: "16600 · specificGravity^1.84 · 0.0068947573",
  inputs: [{ key: "specificGravity", unit: "1", range: [0.2, 0.8] }],
  result: { unit: "MPa" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Table 12.3.3, note 2, diameters under 1/4 in",
  },
  work: ndsBearingStrength,
});
