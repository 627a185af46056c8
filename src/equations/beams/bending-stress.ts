/** Stress in the outer fibre of a flat section. */
import { equation } from "../equation.ts";

export interface BentSection {
  /** Moment (N·mm). */
  readonly momentNmm: number;
  /** Across the span (mm). */
  readonly widthMm: number;
  /** In the plane of bending (mm). */
  readonly thicknessMm: number;
}

/** Stress (MPa). */
export function bendingStress({ momentNmm, widthMm, thicknessMm }: BentSection): number {
  return (6 * momentNmm) / (widthMm * thicknessMm ** 2);
}

export const BENDING_STRESS = equation({
  name: "bending-stress",
  formula: "6 · momentNmm / (widthMm · thicknessMm²)",
  inputs: [
    { key: "momentNmm", unit: "N·mm", range: [0, 1000000000.0] },
    { key: "widthMm", unit: "mm", range: [1, 5000] },
    { key: "thicknessMm", unit: "mm", range: [1, 500] },
  ],
  result: { unit: "MPa" },
  source: { document: "Elastic bending of a bar of oblong section" },
  work: bendingStress,
});
