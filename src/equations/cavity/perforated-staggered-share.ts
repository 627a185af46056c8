/** The free share of a sheet perforated with round holes in a triangle of 60°. */
import { equation } from "../equation.ts";

export interface StaggeredHoles {
  /** Diameter of the holes (mm). */
  readonly holeMm: number;
  /** Between the middles of neighbouring holes (mm). */
  readonly pitchMm: number;
}

/** Free area over whole area, 0 to 1. */
export function perforatedStaggeredShare({ holeMm, pitchMm }: StaggeredHoles): number {
  return (Math.PI / (2 * Math.sqrt(3))) * (holeMm / pitchMm) ** 2;
}

export const PERFORATED_STAGGERED_SHARE = equation({
  name: "perforated-staggered-share",
  formula: "π/(2√3) · (holeMm/pitchMm)²",
  inputs: [
    { key: "holeMm", unit: "mm", range: [0.1, 50] },
    { key: "pitchMm", unit: "mm", range: [0.2, 100] },
  ],
  result: { unit: "1" },
  source: { document: "Perforators’ handbook", clause: "Round holes staggered at 60°" },
  work: perforatedStaggeredShare,
});
