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
