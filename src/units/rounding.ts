/**
 * The roundings lengths get when they are printed for someone to work by, each named for what it is safe for. They take
 * a step in millimetres (1, 0.5, 25.4 / 32 …), forgive arithmetic noise, and return a length on the grid.
 */

import { snap } from "./length.ts";

export interface RoundingStep {
  /** Step to round to, in millimetres, above zero. */
  readonly step: number;
}

/**
 * A length this little short of a step counts as having reached it, in millimetres. Far above the noise of floating-point sums
 * (about 1e-11 at 100 m), far below the grid (1.25e-4).
 */
const NOISE_MM = 1e-6;

/** A length to cut, rounded down: a piece a little short goes in, one a little long does not. Millimetres. */
export function cutLengthMm(lengthMm: number, { step }: RoundingStep): number {
  return snap(Math.floor((lengthMm + NOISE_MM) / step) * step);
}

/** A position to mark, rounded to the nearest step, halves upward, so that errors do not run up along a wall. Millimetres. */
export function positionMm(atMm: number, { step }: RoundingStep): number {
  return snap(Math.floor((atMm + NOISE_MM) / step + 0.5) * step);
}

/** A gap to keep, rounded up: a joint a little wide still moves freely, one a little narrow may close. Millimetres. */
export function gapMm(widthMm: number, { step }: RoundingStep): number {
  return snap(Math.ceil((widthMm - NOISE_MM) / step) * step);
}
