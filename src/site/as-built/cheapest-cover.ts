/** The cheapest choice of levels under which each of some demands is met by one of its pieces. */
import type { Gives } from "./bounds.ts";

/** Of one piece: to be trimmed and to be made again, the second no less; undefined where it may not be. */
export type LevelCosts = readonly [trim: number | undefined, remake: number | undefined];

export interface Cover {
  /** Of each piece: 0 kept, 1 trimmed, 2 made again. */
  readonly levels: readonly number[];
  readonly cost: number;
  /** No choice costs less; the cost itself where the search came to its end. */
  readonly least: number;
}

interface Search {
  readonly demands: readonly (readonly Gives[])[];
  readonly costs: readonly LevelCosts[];
  readonly levels: number[];
  /** The highest level that each piece may still take in this branch. */
  readonly caps: number[];
  best: { levels: readonly number[]; cost: number } | undefined;
  steps: number;
}

/** Exact by branch and bound, group by group of demands that share pieces, while the steps last. @param steps in all */
export function cheapestCover(
  demands: readonly (readonly Gives[])[],
  costs: readonly LevelCosts[],
  steps: number,
): Cover {
  const levels = costs.map(() => 0);
  let [cost, least, left] = [0, 0, steps];
  for (const group of groupsOf(demands)) {
    const search: Search = {
      demands: group,
      costs,
      levels: costs.map(() => 0),
      caps: costs.map(() => 2),
      best: undefined,
      steps: left,
    };
    const floor = leastMore(search);
    branch(search, 0);
    const isWhole = search.steps > 0;
    left = Math.max(search.steps, 0);
    const best = search.best ?? allRaised(search);
    best.levels.forEach((level, piece) => {
      if (level > 0) levels[piece] = level;
    });
    cost += best.cost;
    least += isWhole ? best.cost : floor;
  }
  return { levels, cost, least };
}

function costOf(costs: readonly LevelCosts[], piece: number, level: number): number {
  return level === 0 ? 0 : ((costs[piece] as LevelCosts)[level - 1] ?? Infinity);
}

function branch(search: Search, cost: number): void {
  if (search.best !== undefined && search.steps-- <= 0) return;
  const { levels, caps, costs } = search;
  if (search.best && cost + leastMore(search) >= search.best.cost) return;
  const open = openDemand(search);
  if (open === undefined) {
    search.best = { levels: [...levels], cost };
    return;
  }
  const more = ({ piece, level }: Gives): number =>
    costOf(costs, piece, level) - costOf(costs, piece, levels[piece] as number);
  const choices = [...open].sort((a, b) => more(a) - more(b) || a.piece - b.piece || a.level - b.level);
  const closed: [piece: number, cap: number][] = [];
  for (const choice of choices) {
    const { piece, level } = choice;
    if ((caps[piece] as number) < level) continue;
    const by = more(choice);
    const before = levels[piece] as number;
    levels[piece] = level;
    branch(search, cost + by);
    levels[piece] = before;
    closed.push([piece, caps[piece] as number]);
    caps[piece] = level - 1;
  }
  for (const [piece, cap] of closed.reverse()) caps[piece] = cap;
}

function isOpen({ levels }: Search, demand: readonly Gives[]): boolean {
  return demand.every(({ piece, level }) => (levels[piece] as number) < level);
}

/** The one with the fewest ways left. */
function openDemand(search: Search): readonly Gives[] | undefined {
  let found: readonly Gives[] | undefined;
  for (const demand of search.demands) {
    if (!isOpen(search, demand)) continue;
    const ways = demand.filter(({ piece, level }) => (search.caps[piece] as number) >= level);
    if (!found || ways.length < found.length) found = ways;
  }
  return found;
}

/** What the open demands cost at least: those that share no piece are paid apart. */
function leastMore(search: Search): number {
  const taken = new Set<number>();
  let sum = 0;
  for (const demand of search.demands) {
    if (!isOpen(search, demand) || demand.some(({ piece }) => taken.has(piece))) continue;
    let cheapest = Infinity;
    for (const { piece, level } of demand) {
      taken.add(piece);
      if ((search.caps[piece] as number) < level) continue;
      const now = costOf(search.costs, piece, search.levels[piece] as number);
      cheapest = Math.min(cheapest, costOf(search.costs, piece, level) - now);
    }
    sum += cheapest;
  }
  return sum;
}

function allRaised({ demands, costs }: Search): { levels: readonly number[]; cost: number } {
  const levels = costs.map(() => 0);
  for (const { piece, level } of demands.flat()) levels[piece] = Math.max(levels[piece] as number, level);
  return { levels, cost: levels.reduce((sum, level, piece) => sum + costOf(costs, piece, level), 0) };
}

/** Demands that share pieces, directly or by others, in their order. */
function groupsOf(demands: readonly (readonly Gives[])[]): (readonly Gives[])[][] {
  const root = new Map<number, number>();
  const find = (piece: number): number => {
    const up = root.get(piece) ?? piece;
    return up === piece ? piece : find(up);
  };
  for (const demand of demands) {
    const first = demand[0];
    if (!first) continue;
    for (const { piece } of demand) root.set(find(piece), find(first.piece));
  }
  const groups = new Map<number, (readonly Gives[])[]>();
  for (const demand of demands) {
    const at = find((demand[0] as Gives).piece);
    groups.set(at, [...(groups.get(at) ?? []), demand]);
  }
  return [...groups.values()];
}
