/** Places for all edges under bounds that hold: gaps as even as one share of all bands allows, and every piece as near to its place as can be. */
import { type Axis, type Bound, held } from "./bounds.ts";
import { standing } from "./fewest-cuts.ts";

/** Shares of the bands that are tried, from none of them to all. */
const SHARES = 16;

/** Rounds in which pieces go back towards their places. */
const MOST_ROUNDS = 200;

export interface Placed {
  readonly x: readonly number[];
  /** Of its band, from what was set out, that the worst gap takes: 0 to 1. */
  readonly share: number;
}

interface Places {
  readonly levels: readonly number[];
  /** Where each unknown was. */
  readonly drawn: readonly number[];
  /** Unknowns of each piece, which move as one before they move apart. */
  readonly together: readonly (readonly number[])[];
}

/** What bounds tie to one another is placed by itself: what nothing disturbs stays as it was. Undefined where the bounds do not hold. */
export function evenPlaces(
  { unknowns, bounds }: Axis,
  { levels, drawn, together }: Places,
): Placed | undefined {
  const stand = standing(bounds, levels);
  const part = partsOf(unknowns, [
    ...stand.map(({ from, to }) => [from, to] as const),
    ...together.flatMap((group) => group.map((one) => [group[0] as number, one] as const)),
  ]);
  const members = new Map<number, number[]>();
  for (let one = 1; one < unknowns; one++) {
    const own = part[one] as number;
    members.set(own, [...(members.get(own) ?? []), one]);
  }
  const boundsOf = new Map<number, Bound[]>();
  for (const bound of stand) {
    const own = part[bound.from === 0 ? bound.to : bound.from] as number;
    const list = boundsOf.get(own);
    if (list) list.push(bound);
    else boundsOf.set(own, [bound]);
  }
  const groups = new Map<number, (readonly number[])[]>();
  for (const group of together) {
    const own = part[group[0] as number] as number;
    groups.set(own, [...(groups.get(own) ?? []), group]);
  }
  const x = [...drawn];
  let worst = 0;
  for (const [own, list] of members) {
    const placed = placePart(boundsOf.get(own) ?? [], {
      members: list,
      drawn,
      together: groups.get(own) ?? [],
    });
    if (!placed) return undefined;
    list.forEach((one, i) => {
      x[one] = placed.x[i + 1] as number;
    });
    worst = Math.max(worst, placed.share);
  }
  return { x, share: worst };
}

/** For each unknown the least of those that it is tied to, the wall left out. */
function partsOf(unknowns: number, ties: readonly (readonly [number, number])[]): number[] {
  const part = Array.from({ length: unknowns }, (_, i) => i);
  const find = (one: number): number => {
    let at = one;
    while (part[at] !== at) at = part[at] as number;
    return at;
  };
  for (const [a, b] of ties) {
    if (a === 0 || b === 0) continue;
    const [low, high] = [find(a), find(b)].sort((p, q) => p - q) as [number, number];
    part[high] = low;
  }
  return part.map((_, i) => find(i));
}

function placePart(
  stand: readonly Bound[],
  {
    members,
    drawn: all,
    together: groups,
  }: {
    readonly members: readonly number[];
    readonly drawn: readonly number[];
    readonly together: readonly (readonly number[])[];
  },
): Placed | undefined {
  const index = new Map([0, ...members].map((one, i) => [one, i]));
  const own = (one: number): number => index.get(one) ?? 0;
  const bounds = stand.map((bound) => ({ ...bound, from: own(bound.from), to: own(bound.to) }));
  const drawn = [0, ...members.map((one) => all[one] as number)];
  const together = groups.map((group) => group.map(own));
  for (let share = 0; share <= SHARES; share++) {
    const drawnIn = bounds.map((bound) => within(bound, share));
    if (drawnIn.every(({ from, to, most }) => (drawn[to] as number) - (drawn[from] as number) <= most)) {
      return { x: drawn, share: share / SHARES };
    }
    const most = held(drawn.length, drawnIn);
    if (!most.holds) continue;
    const least = held(drawn.length, drawnIn.map(turned));
    // The middle of two answers is one as well, since bounds and unknowns are whole numbers, rounded down alike.
    const low = least.holds ? least.x.map((value) => -value) : most.x;
    const x = most.x.map((value, i) => Math.floor((value + (low[i] as number)) / 2));
    settle(x, drawnIn, { drawn, together });
    return { x, share: share / SHARES };
  }
  return undefined;
}

function within(bound: Bound, share: number): Bound {
  const { even, most } = bound;
  return even === undefined || most <= even
    ? bound
    : { ...bound, most: even + Math.floor(((most - even) * share) / SHARES) };
}

function turned({ from, to, most }: Bound): Bound {
  return { from: to, to: from, most };
}

/** Moves pieces whole, then edge by edge, as near to where they were as the others let them, until none moves. */
function settle(
  x: number[],
  bounds: readonly Bound[],
  {
    drawn,
    together,
  }: { readonly drawn: readonly number[]; readonly together: readonly (readonly number[])[] },
): void {
  const touching = x.map((): Bound[] => []);
  for (const bound of bounds) {
    touching[bound.from]?.push(bound);
    touching[bound.to]?.push(bound);
  }
  const groups = [...together, ...together.flatMap((group) => group.map((one) => [one]))].map((group) => {
    const members = new Set(group);
    return { group, members, bounds: [...new Set(group.flatMap((one) => touching[one] ?? []))] };
  });
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = false;
    for (const { group, members, bounds: own } of groups) {
      const first = group[0] as number;
      const wanted = (drawn[first] as number) - (x[first] as number);
      if (wanted === 0) continue;
      let [low, high] = [-Infinity, Infinity];
      for (const { from, to, most } of own) {
        if (members.has(from) === members.has(to)) continue;
        const slack = most - ((x[to] as number) - (x[from] as number));
        if (members.has(to)) high = Math.min(high, slack);
        else low = Math.max(low, -slack);
      }
      const by = Math.min(Math.max(wanted, low), high);
      if (by === 0) continue;
      for (const one of group) x[one] = (x[one] as number) + by;
      moved = true;
    }
    if (!moved) return;
  }
}
