/** Equal pieces waiting to be placed. */
export interface PieceGroup {
  readonly length: number;
  readonly count: number;
}

/** What the pieces can fill of any length up to the capacity, each piece used at most once. */
export interface SubsetSums {
  /** The most that can be filled of `length`. */
  best(length: number): number;
  /** How many of each group fill that most, by group number. */
  take(length: number): Map<number, number>;
}

const mostCells = 6_000;

/**
 * All subset sums by dynamic programming over lengths (the recursion for bounded knapsacks in Martello & Toth, Knapsack
 * Problems, Wiley 1990, ch. 3). Lengths are counted in `unit`s; where that gives too long a table, in coarser ones,
 * pieces rounded up and capacity down, so that what it says fits does fit.
 */
export function subsetSums(groups: readonly PieceGroup[], capacity: number, unit: number): SubsetSums {
  const cell = Math.max(unit, Math.ceil(capacity / mostCells / unit) * unit);
  const cells = Math.floor(Math.max(0, capacity) / cell);
  const via = new Int32Array(cells + 1).fill(-1);
  const reached = new Uint8Array(cells + 1);
  const uses = new Int32Array(cells + 1);
  reached[0] = 1;
  groups.forEach((group, index) => {
    const step = Math.ceil(group.length / cell);
    if (step <= 0 || step > cells || group.count <= 0) return;
    uses.fill(0);
    for (let sum = step; sum <= cells; sum++) {
      if (reached[sum] === 1 || reached[sum - step] !== 1) continue;
      const used = uses[sum - step] ?? 0;
      if (used >= group.count) continue;
      reached[sum] = 1;
      uses[sum] = used + 1;
      via[sum] = index;
    }
  });
  const highest = new Int32Array(cells + 1);
  for (let sum = 1; sum <= cells; sum++) highest[sum] = reached[sum] === 1 ? sum : (highest[sum - 1] ?? 0);
  const top = (length: number) => highest[Math.min(cells, Math.floor(Math.max(0, length) / cell))] ?? 0;

  return {
    best: (length) => top(length) * cell,
    take: (length) => {
      const taken = new Map<number, number>();
      let sum = top(length);
      while (sum > 0) {
        const group = via[sum] ?? -1;
        const step = Math.ceil((groups[group]?.length ?? 0) / cell);
        if (step <= 0) break;
        taken.set(group, (taken.get(group) ?? 0) + 1);
        sum -= step;
      }
      return taken;
    },
  };
}
