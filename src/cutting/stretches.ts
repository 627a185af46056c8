/**
 * The steps of a search in the stretches that it takes them in. What some effort does first is all that half of it does, to the
 * step: a search with twice the effort goes on from what it would have found with half, so more effort never gives a dearer plan.
 *
 * @param effort a whole number of times the budget, from 1
 */
export function stretches(budget: number, effort = 1): number[] {
  const half = Math.floor(effort / 2);
  return half < 1 ? [budget * effort] : [...stretches(budget, half), budget * (effort - half)];
}
