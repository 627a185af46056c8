/** How far a screw is used that is pulled and sheared at once, by the United States’ standard. */
import { equation } from "../equation.ts";

export interface PulledAndSheared {
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
export function ndsCombined({ pullN, shearN, pullHeldN, shearHeldN }: PulledAndSheared): number {
  const load = Math.hypot(pullN, shearN);
  if (load === 0) return 0;
  const [along, across] = [(pullN / load) ** 2, (shearN / load) ** 2];
  return (load * (pullHeldN * across + shearHeldN * along)) / (pullHeldN * shearHeldN);
}

export const NDS_COMBINED = equation({
  name: "nds-combined",
  formula: "(pullN²/pullHeldN + shearN²/shearHeldN) / √(pullN² + shearN²)",
  inputs: [
    { key: "pullN", unit: "N", range: [0, 50000] },
    { key: "shearN", unit: "N", range: [0, 50000] },
    { key: "pullHeldN", unit: "N", range: [1, 50000] },
    { key: "shearHeldN", unit: "N", range: [1, 50000] },
  ],
  result: { unit: "1" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause: "Equation 12.4-1",
  },
  work: ndsCombined,
});
