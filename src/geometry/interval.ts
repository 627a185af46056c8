/** Closed intervals on a line, in millimetres. Lists are sorted and disjoint. */

export type Interval = readonly [from: number, to: number];

export function intervalLength(interval: Interval): number {
  return interval[1] - interval[0];
}

/** Whether two intervals share more than an end point. */
export function overlaps(a: Interval, b: Interval): boolean {
  return a[0] < b[1] && b[0] < a[1];
}

/** The common part of two intervals, or undefined when they share less than a length. */
export function common(a: Interval, b: Interval): Interval | undefined {
  const from = Math.max(a[0], b[0]);
  const to = Math.min(a[1], b[1]);
  return from < to ? [from, to] : undefined;
}

/** What is left of `whole` when every hole is taken out, from left to right. */
export function subtractIntervals(whole: Interval, holes: readonly Interval[]): Interval[] {
  const sorted = holes.filter((hole) => overlaps(hole, whole));
  if (sorted.length === 0) return whole[0] < whole[1] ? [whole] : [];
  if (sorted.length > 1) sorted.sort((a, b) => a[0] - b[0]);
  const rest: Interval[] = [];
  let from = whole[0];
  for (const hole of sorted) {
    if (hole[0] > from) rest.push([from, hole[0]]);
    from = Math.max(from, hole[1]);
  }
  if (from < whole[1]) rest.push([from, whole[1]]);
  return rest;
}

/** Joins touching and overlapping intervals; the result is sorted. */
export function mergeIntervals(intervals: readonly Interval[]): Interval[] {
  const merged: [number, number][] = [];
  for (const [from, to] of [...intervals].sort((a, b) => a[0] - b[0])) {
    const last = merged.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else merged.push([from, to]);
  }
  return merged;
}
