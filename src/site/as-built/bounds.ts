/** Bounds on differences of unknowns, in whole grid steps: whether they hold together, and where they do not. */

/** Which piece gives a bound up, and how far it must be cut for that: 1 trimmed, 2 made again. */
export interface Gives {
  readonly piece: number;
  readonly level: 1 | 2;
}

/** `x[to] − x[from] ≤ most`. Unknown 0 is the wall itself and stands at nothing. */
export interface Bound {
  readonly from: number;
  readonly to: number;
  readonly most: number;
  /** Absent where nothing gives it up. */
  readonly gives?: Gives;
  /** What the difference was set out to, where it may be drawn nearer to that: a gap or a clearance. */
  readonly even?: number;
  /** What it stands for, by a number of the asker's. */
  readonly of?: number;
}

/** Unknowns along one axis. */
export interface Axis {
  readonly unknowns: number;
  readonly bounds: readonly Bound[];
}

export type Held =
  | { readonly holds: true; readonly x: readonly number[] }
  /** The bounds of a ring whose sum is less than nothing: they cannot all hold. */
  | { readonly holds: false; readonly ring: readonly Bound[] };

/**
 * Values under the bounds, the wall at nothing, each as large as can be; or a ring of bounds that contradict each other (Bellman 1958, Quarterly of
 * Applied Mathematics 16:87). Every unknown must be bound to the wall both ways.
 */
export function held(unknowns: number, bounds: readonly Bound[]): Held {
  const x = new Array<number>(unknowns).fill(0);
  const by = new Array<number>(unknowns).fill(-1);
  // All start at nothing, as from one more unknown that bounds each: so every ring is found, wherever it lies.
  for (;;) {
    let changed = false;
    for (let i = 0; i < bounds.length; i++) {
      const { from, to, most } = bounds[i] as Bound;
      const value = (x[from] as number) + most;
      if (value < (x[to] as number)) {
        x[to] = value;
        by[to] = i;
        changed = true;
      }
    }
    if (!changed) break;
    const ring = ringIn(bounds, by);
    if (ring) return { holds: false, ring };
  }
  return { holds: true, x: fromWall(unknowns, bounds) };
}

/** The largest values that the bounds leave, since they hold. */
function fromWall(unknowns: number, bounds: readonly Bound[]): number[] {
  const x = new Array<number>(unknowns).fill(Infinity);
  x[0] = 0;
  for (let changed = true; changed; ) {
    changed = false;
    for (const { from, to, most } of bounds) {
      const value = (x[from] as number) + most;
      if (value < (x[to] as number)) {
        x[to] = value;
        changed = true;
      }
    }
  }
  return x;
}

/** A ring among the bounds by which the values were last lowered: such a ring sums to less than nothing. */
function ringIn(bounds: readonly Bound[], by: readonly number[]): Bound[] | undefined {
  const seen = new Array<number>(by.length).fill(-1);
  for (let start = 0; start < by.length; start++) {
    let at = start;
    while ((seen[at] as number) < 0 && (by[at] as number) >= 0) {
      seen[at] = start;
      at = (bounds[by[at] as number] as Bound).from;
    }
    if (seen[at] !== start || (by[at] as number) < 0) continue;
    const ring: Bound[] = [];
    let next = at;
    do {
      const bound = bounds[by[next] as number] as Bound;
      ring.push(bound);
      next = bound.from;
    } while (next !== at);
    return ring.reverse();
  }
  return undefined;
}
