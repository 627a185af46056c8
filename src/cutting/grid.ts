/**
 * Solvers count in whole steps of the length grid (1/8000 mm), so that sums are exact and a piece that fits to the
 * last step is seen to fit.
 */
const stepsPerMm = 8000;

/** Millimetres to the nearest whole step. */
export function toSteps(mm: number): number {
  return Math.round(mm * stepsPerMm);
}

/** Whole steps to millimetres: the number that the project's rounding of the same length gives. */
export function toMm(steps: number): number {
  return steps / stepsPerMm;
}

/** Largest whole number that divides all of the given whole numbers; 1 where there are none but zeros. */
export function commonDivisor(values: readonly number[]): number {
  let divisor = 0;
  for (const value of values) {
    let a = divisor;
    let b = Math.abs(value);
    while (b > 0) [a, b] = [b, a % b];
    divisor = a;
    if (divisor === 1) break;
  }
  return divisor === 0 ? 1 : divisor;
}
