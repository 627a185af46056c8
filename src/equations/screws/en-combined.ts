/** How far a screw is used that is pulled and sheared at once, in Europe. */
import { equation } from "../equation.ts";

export interface PulledAndShearedEurope {
  /** Along the screw (N). */
  readonly pullN: number;
  /** Across the screw (N). */
  readonly shearN: number;
  /** What it holds along (N). */
  readonly pullHeldN: number;
  /** What it holds across (N). */
  readonly shearHeldN: number;
}

/** Share of what it holds. */
export function enCombined({ pullN, shearN, pullHeldN, shearHeldN }: PulledAndShearedEurope): number {
  return (pullN / pullHeldN) ** 2 + (shearN / shearHeldN) ** 2;
}

export const EN_COMBINED = equation({
  name: "en-combined",
  formula: "(pullN/pullHeldN)² + (shearN/shearHeldN)²",
  inputs: [
    { key: "pullN", unit: "N", range: [0, 50000] },
    { key: "shearN", unit: "N", range: [0, 50000] },
    { key: "pullHeldN", unit: "N", range: [1, 50000] },
    { key: "shearHeldN", unit: "N", range: [1, 50000] },
  ],
  result: { unit: "1" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.3.3, Equation 8.28" },
  work: enCombined,
});
