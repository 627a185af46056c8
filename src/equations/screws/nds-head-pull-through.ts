/** What pulls a round head through the wood under it, by the United States’ standard. */
import { equation } from "../equation.ts";

export interface HeadOnWood {
  /** Of the wood under the head. */
  readonly specificGravity: number;
  /** Diameter of the head (mm). */
  readonly headMm: number;
  /** Of the wood under the head, net of a sunk head (mm). */
  readonly thicknessMm: number;
}

/** Allowable pull-through, ten years’ load (N). */
export function ndsHeadPullThrough({ specificGravity, headMm, thicknessMm }: HeadOnWood): number {
  const head = headMm / 25.4;
  const thickness = Math.min(thicknessMm / 25.4, 2.5 * head);
  return 690 * Math.PI * head * specificGravity ** 2 * thickness * 4.4482216;
}

export const NDS_HEAD_PULL_THROUGH = equation({
  name: "nds-head-pull-through",
  formula: "690 · π · (headMm/25.4) · specificGravity² · min(thicknessMm/25.4, 2.5·headMm/25.4) · 4.4482216",
  inputs: [
    { key: "specificGravity", unit: "1", range: [0.2, 0.8] },
    { key: "headMm", unit: "mm", range: [5.9, 12.7] },
    { key: "thicknessMm", unit: "mm", range: [7.9, 38.1] },
  ],
  result: { unit: "N" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Equations 12.2-6a and 12.2-6b, Table 12.2F, as coded in two public scripts",
  },
  work: ndsHeadPullThrough,
});
