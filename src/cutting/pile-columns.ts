/**
 * Whole boards of a pile as patterns, each with its strips and all that is cut from them: what the most is that a board can be worth
 * at any prices of the pieces, exactly, so that defects, trim, blade and the spare that a width leaves on just this board all count.
 * The linear programme over such patterns then knows of no common width or length between boards, and needs none.
 */
import { type BarPattern, barWorth, summed } from "./bar-worth.ts";
import type { ColumnJob, Columns, PricedPattern } from "./columns.ts";
import { commonDivisor } from "./divisor.ts";

/** Lengths and widths in grid steps, grown by the kerf; areas in m². */
export interface PileBoardSize {
  /** Across which strips may lie. */
  readonly room: number;
  /** Along which pieces may lie. */
  readonly runs: readonly number[];
  readonly area: number;
  /** By width: may it be ripped to it? */
  readonly suits: readonly boolean[];
}

export interface PilePieceSize {
  /** Place of its width in the list. */
  readonly width: number;
  readonly length: number;
  readonly area: number;
}

export interface PileSizes {
  readonly boards: readonly PileBoardSize[];
  readonly widths: readonly number[];
  readonly pieces: readonly PilePieceSize[];
}

export interface StripPattern {
  readonly width: number;
  /** How often each type lies in each run. */
  readonly runs: readonly ReadonlyMap<number, number>[];
}

export interface BoardPattern extends PricedPattern {
  readonly strips: readonly StripPattern[];
}

/** Equal pieces as one type, equal boards as one stock; both by their places in the lists that they come from. */
export interface PileKinds {
  readonly types: readonly (PilePieceSize & { readonly places: readonly number[] })[];
  readonly boards: readonly (PileBoardSize & { readonly places: readonly number[] })[];
}

/** The pieces of some places alone; absent: all. */
export function kindsOf({ boards, pieces }: PileSizes, chosen?: ReadonlySet<number>): PileKinds {
  return {
    types: alike(pieces, ({ width, length }) => `${width} ${length}`, chosen),
    boards: alike(boards, ({ room, runs, suits, area }) => JSON.stringify([room, runs, suits, area])),
  };
}

function alike<One>(
  list: readonly One[],
  nameOf: (one: One) => string,
  chosen?: ReadonlySet<number>,
): (One & { readonly places: readonly number[] })[] {
  const kinds = new Map<string, One & { readonly places: number[] }>();
  list.forEach((one, place) => {
    if (chosen?.has(place) === false) return;
    const name = nameOf(one);
    const kind = kinds.get(name) ?? { ...one, places: [] };
    kind.places.push(place);
    kinds.set(name, kind);
  });
  return [...kinds.values()];
}

export interface BoardWorth {
  /** Entries of lists made so far. */
  readonly spent: number;
  /** For whole-number worths and the pieces wanted of each type: the best pattern of each board; undefined where lists grow too long. */
  best(worth: Float64Array, demand: readonly number[]): readonly BoardPattern[] | undefined;
}

/** Sums of a linear programme that take as long as an entry of a list. */
const SUMS_AN_ENTRY = 160;

/**
 * Of every width that suits a board a strip filled at its best, and of strips the best that lie side by side. Strips of a board are
 * filled apart, so a piece may count once too often: a bound is then lower, never wrong.
 */
export function boardWorth({ widths }: PileSizes, { types, boards }: PileKinds): BoardWorth {
  const serves = widths.map((_, width) => new Set([width]));
  const strips = boards.flatMap(({ room, runs, suits }, board) =>
    widths.flatMap((wide, width) => (suits[width] && wide <= room ? [{ board, width, wide, runs }] : [])),
  );
  const bars = strips.map(({ width, runs }, stock) => ({
    stock,
    cost: 0,
    runs,
    serves: serves[width] ?? new Set<number>(),
  }));
  const lengths = [...types.map(({ length }) => length), ...boards.flatMap(({ runs }) => runs)];
  const kinds = types.map(({ length, width }) => ({ length, kind: width }));
  const worths = barWorth(kinds, bars, commonDivisor(lengths));
  const best = (worth: Float64Array, demand: readonly number[]): BoardPattern[] | undefined => {
    const filled: BarPattern[] = [];
    const found = worths.best(worth, demand);
    if (found === undefined) return undefined;
    for (const one of found) filled[one.stock] = one;
    const own = boards.map((): FilledStrip[] => []);
    strips.forEach(({ board, width, wide }, strip) => {
      const one = filled[strip];
      if (one !== undefined && one.worth > 0)
        own[board]?.push({ width, wide, worth: one.worth, runs: one.runs });
    });
    return boards.map(({ room }, board) => boardPattern(board, sideBySide(own[board] ?? [], room)));
  };
  return {
    get spent() {
      return worths.spent;
    },
    best,
  };
}

interface FilledStrip extends StripPattern {
  readonly wide: number;
  readonly worth: number;
}

function boardPattern(stock: number, strips: readonly FilledStrip[]): BoardPattern {
  return {
    stock,
    worth: strips.reduce((sum, { worth }) => sum + worth, 0),
    strips,
    counts: summed(strips.flatMap(({ runs }) => runs)),
  };
}

/** Strips worth the most that go into a room side by side, each as often as one likes. */
function sideBySide(strips: readonly FilledStrip[], room: number): FilledStrip[] {
  let best: FilledStrip[] = [];
  let most = 0;
  const chosen: FilledStrip[] = [];
  const add = (from: number, left: number, worth: number): void => {
    if (worth > most) {
      most = worth;
      best = [...chosen];
    }
    for (let at = from; at < strips.length; at++) {
      const strip = strips[at] as FilledStrip;
      if (strip.wide > left) continue;
      chosen.push(strip);
      add(at, left - strip.wide, worth + strip.worth);
      chosen.pop();
    }
  };
  add(0, room, 0);
  return best;
}

/** A pattern without the pieces that are no longer wanted, itself where it has none. */
export function within(pattern: BoardPattern, demand: readonly number[]): BoardPattern {
  let isWanted = true;
  for (const [type, count] of pattern.counts) isWanted &&= count <= (demand[type] ?? 0);
  if (isWanted) return pattern;
  const left = [...demand];
  const strips = pattern.strips.flatMap(({ width, runs }) => {
    const kept = runs.map((run) => {
      const counts = new Map<number, number>();
      for (const [type, count] of run) {
        const own = Math.min(count, left[type] ?? 0);
        if (own > 0) counts.set(type, own);
        left[type] = (left[type] ?? 0) - own;
      }
      return counts;
    });
    return kept.some(({ size }) => size > 0) ? [{ width, runs: kept }] : [];
  });
  return { ...pattern, strips, counts: summed(strips.flatMap(({ runs }) => runs)) };
}

/**
 * Boards and, at a price, pieces left out.
 *
 * @param boardCost what a board of each kind costs
 * @param outCost what leaving out a piece of each type costs; absent: none may be left out
 */
export function columnJob(
  { types, boards }: PileKinds,
  worths: BoardWorth,
  costs: {
    readonly boards: readonly number[];
    readonly out?: readonly number[];
    readonly demand?: readonly number[];
    readonly counts?: readonly number[];
  },
): ColumnJob {
  const demand = costs.demand ?? types.map(({ places }) => places.length);
  return {
    demand,
    stock: [
      ...boards.map(({ places }, at) => ({
        cost: costs.boards[at] ?? 0,
        count: costs.counts?.[at] ?? places.length,
      })),
      ...(costs.out ?? []).map((cost) => ({ cost, count: Number.POSITIVE_INFINITY })),
    ],
    best: (worth) => {
      const found = worths.best(worth, demand);
      return found && [...found, ...(costs.out ?? []).map((_, type) => leftOut(boards.length, type, worth))];
    },
  };
}

/** One piece left out. */
function leftOut(boards: number, type: number, worth: ArrayLike<number>): BoardPattern {
  return { stock: boards + type, worth: worth[type] ?? 0, strips: [], counts: new Map([[type, 1]]) };
}

/** Adds patterns until none lowers the cost, in at most so many sums; gives how many it took, about. */
export function solve(columns: Columns, worths: BoardWorth, most: number): number {
  const before = worths.spent;
  const spent = (): number => columns.spent + (worths.spent - before) * SUMS_AN_ENTRY;
  for (let left = most; left > 0 && columns.round(left); ) left = most - spent();
  return spent();
}
