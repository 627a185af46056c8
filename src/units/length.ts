/**
 * Lengths are plain numbers of millimetres. A length that becomes part of a piece lies on a grid of 1/8000 mm, on which
 * both the millimetre (8000 steps) and 1/64 inch (0.396875 mm = 3175 steps) are whole, so equal lengths compare equal.
 */

/** Steps of the length grid in one millimetre. */
export const GRID_STEPS_PER_MM = 8000;

/** The length grid, in millimetres. */
export const GRID_MM = 1 / GRID_STEPS_PER_MM;

/** Millimetres in one inch; exact by definition (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;

/** Inches in one foot. */
export const INCHES_PER_FOOT = 12;

/**
 * A length in whole steps of the grid, for exact integer work.
 * @param mm length in millimetres, exact up to 10^9 mm either way
 */
export function toGridSteps(mm: number): number {
  // Adding zero turns -0 into 0, so that equal lengths also print and hash alike.
  return Math.round(mm * GRID_STEPS_PER_MM) + 0;
}

/** The length in millimetres of a whole number of grid steps. */
export function fromGridSteps(steps: number): number {
  return steps / GRID_STEPS_PER_MM + 0;
}

/** The grid length nearest to `mm`, halves upward; never -0. NaN and infinities pass through unchanged. */
export function snap(mm: number): number {
  return fromGridSteps(toGridSteps(mm));
}

/** Whether two lengths in millimetres are the same on the grid. */
export function sameLength(a: number, b: number): boolean {
  return toGridSteps(a) === toGridSteps(b);
}
