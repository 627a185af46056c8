/** The free share of a sheet perforated with round holes in squares. */
import { equation } from "../equation.ts";

export interface SquareHoles {
  /** Diameter of the holes (mm). */
  readonly holeMm: number;
  /** Between the middles of neighbouring holes (mm). */
  readonly pitchMm: number;
}

/** Free area over whole area, 0 to 1. */
export function perforatedSquareShare({ holeMm, pitchMm }: SquareHoles): number {
  return (Math.PI / 4) * (holeMm / pitchMm) ** 2;
}

export const PERFORATED_SQUARE_SHARE = equation({
  name: "perforated-square-share",
  formula: "π/4 · (holeMm/pitchMm)²",
  inputs: [
    { key: "holeMm", unit: "mm", range: [0.1, 50] },
    { key: "pitchMm", unit: "mm", range: [0.2, 100] },
  ],
  result: { unit: "1" },
  source: { document: "Perforators’ handbook", clause: "Round holes in line" },
  work: perforatedSquareShare,
});
