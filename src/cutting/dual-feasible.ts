/**
 * Dual feasible functions. Such a function f on [0, C] is superadditive, never falls and keeps f(C) = 1, so lengths
 * that fit together in s have function values that sum to at most f(s). The same holds for rectangles with one
 * function an axis (Fekete & Schepers, Math. Methods of Operations Research 60 (2004) 311-329). The families are those
 * in Clautiaux, Alves & Valério de Carvalho, Annals of Operations Research 179 (2010) 317-342, formulas from memory:
 * the threshold function (with it, the bound by sorted large pieces of Martello & Toth is reached) and the rounding
 * function of Carlier, Clautiaux & Moukrim, Computers & Operations Research 34 (2007) 2223-2250.
 */
/** More than this many thresholds make the bound dear without making it better. */
const mostThresholds = 40;

export type DualFeasible = (length: number) => number;

/** The functions worth trying for whole-number lengths up to `capacity`; the first is plain proportion. */
export function dualFeasibleFunctions(lengths: readonly number[], capacity: number): DualFeasible[] {
  const steps = thresholds(lengths, capacity);
  return [
    (length) => length / capacity,
    ...steps.map((step) => threshold(step, capacity)),
    ...steps.map((step) => rounding(step, capacity)),
  ];
}

/** Values at which either family changes: piece lengths, their complements, and whole parts of the capacity. */
function thresholds(lengths: readonly number[], capacity: number): number[] {
  const found = new Set<number>();
  for (const length of lengths) {
    for (const step of [length, capacity - length, capacity - length + 1]) {
      if (step > 0 && 2 * step <= capacity) found.add(step);
    }
  }
  const ranked = [...found].sort((a, b) => b - a);
  const every = Math.max(1, Math.ceil(ranked.length / mostThresholds));
  const kept = ranked.filter((_, index) => index % every === 0);
  const parts = [2, 3, 4, 5, 6, 7, 8].map((part) => Math.floor(capacity / (part + 1)) + 1);
  return [...new Set([...kept, ...parts.filter((step) => 2 * step <= capacity)])];
}

/** Long lengths count as the whole, short ones as nothing. */
function threshold(step: number, capacity: number): DualFeasible {
  return (length) => {
    if (length > capacity - step) return 1;
    return length < step ? 0 : length / capacity;
  };
}

/** Short lengths count by whole steps; what a long one leaves is counted the same way. */
function rounding(step: number, capacity: number): DualFeasible {
  const whole = Math.floor(capacity / step);
  return (length) => {
    if (2 * length > capacity) return 1 - Math.floor((capacity - length) / step) / whole;
    if (2 * length === capacity) return 1 / 2;
    return Math.floor(length / step) / whole;
  };
}
