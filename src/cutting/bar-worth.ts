/**
 * The most that pieces on one bar can be worth, each no oftener than it is wanted: bounded knapsacks by lists of what is worth
 * more than anything shorter (Nemhauser & Ullmann, Management Science 15 (1969) 494-505), or, where lengths lie on a coarse grid,
 * by a table over it (Martello & Toth, Knapsack Problems, Wiley 1990, ch. 3); multiples split into powers of two. One list answers for all bars that serve the same pieces. Runs of a bar are filled apart, so that
 * pieces may be counted once too often in several: a bound is then lower, never wrong. Exact in whole numbers.
 */
import type { BarType } from "./bar-fill.ts";
import type { PricedPattern } from "./columns.ts";

/** Equal pieces. */
export interface PieceKind {
  readonly length: number;
  /** Class of pieces that may lie on the same bars. */
  readonly kind: number;
}

/** How often each type lies in each run of a bar. */
export interface BarPattern extends PricedPattern {
  readonly runs: readonly ReadonlyMap<number, number>[];
}

export interface BarWorth {
  /** Entries of lists made so far. */
  readonly spent: number;
  /**
   * For whole-number worths and the pieces wanted of each type: the best pattern of each bar. Undefined where the lists grow
   * too long.
   */
  best(worth: ArrayLike<number>, demand: ArrayLike<number>): BarPattern[] | undefined;
}

/** Entries of one list, above which it is given up. */
const LONGEST_LIST = 60_000;
/** Cells of a table, above which a list is made instead. */
const LONGEST_TABLE = 20_000;
/** A table's cells are reckoned so much faster than a list's entries. */
const CELLS_AN_ENTRY = 8;

/** @param unit a length that divides all lengths */
export function barWorth(types: readonly PieceKind[], bars: readonly BarType[], unit: number): BarWorth {
  const groups = new Map<ReadonlySet<number>, number[]>();
  bars.forEach(({ serves }, place) => {
    const same = groups.get(serves);
    if (same === undefined) groups.set(serves, [place]);
    else same.push(place);
  });
  const bySet = [...groups].map(([serves, places]) => {
    const runs = places.flatMap((place) => bars[place]?.runs ?? []);
    const longest = runs.reduce((most, run) => Math.max(most, run), 0);
    const own = types.flatMap(({ length, kind }, type) =>
      serves.has(kind) && length <= longest ? [{ type, length }] : [],
    );
    const table = longest / unit <= LONGEST_TABLE ? tables(runs, unit) : undefined;
    return { places, longest, own, table };
  });
  let spent = 0;
  return {
    get spent() {
      return spent;
    },
    best(worth, demand) {
      const patterns: BarPattern[] = [];
      for (const { places, longest, own, table } of bySet) {
        const parts = partsOf(own, longest, worth, demand);
        const list = table === undefined ? listOf(parts, longest) : table(parts);
        if (list === undefined) return undefined;
        spent += list.spent;
        for (const stock of places) patterns.push(patternOf(stock, bars[stock]?.runs ?? [], list));
      }
      return patterns;
    },
  };
}

interface Part {
  readonly type: number;
  readonly count: number;
  readonly length: number;
  readonly worth: number;
}

/** The best fillings of every length. */
interface Fillings {
  readonly spent: number;
  worthOf(run: number): number;
  take(run: number): Map<number, number>;
}

/** Makes tables that answer for some runs, all in the same room: a table is of use until the next is made. */
function tables(runs: readonly number[], unit: number): (parts: readonly Part[]) => Fillings {
  const cells = runs.map((run) => Math.floor(run / unit));
  const width = cells.reduce((most, cell) => Math.max(most, cell), 0) + 1;
  const shortest = cells.reduce((least, cell) => Math.min(least, cell), width);
  const value = new Float64Array(width);
  let taken = new Uint8Array(0);
  return (parts) => {
    if (taken.length < parts.length * width) taken = new Uint8Array(parts.length * width);
    else taken.fill(0, 0, parts.length * width);
    value.fill(0);
    let filled = 0;
    let spent = width;
    let later = parts.reduce((sum, { length }) => sum + Math.round(length / unit), 0);
    const reaches = new Int32Array(parts.length);
    for (let place = 0; place < parts.length; place++) {
      const { length, worth } = parts[place] as Part;
      const size = Math.round(length / unit);
      // Above what the parts so far can fill, all cells are worth the same.
      const reach = Math.min(width - 1, filled + size);
      const most = value[filled] as number;
      for (let cell = filled + 1; cell <= reach; cell++) value[cell] = most;
      filled = reach;
      reaches[place] = reach;
      later -= size;
      // Lower cells lead to nothing that is asked for, even where all parts to come are added.
      const least = Math.max(size, Math.min(shortest - later, reach));
      addPart(value, taken, { from: place * width, size, reach, least, worth });
      spent += reach + 1 - least;
    }
    const cellFor = (run: number) => Math.min(filled, Math.floor(run / unit));
    return {
      spent: spent / CELLS_AN_ENTRY,
      worthOf: (run) => value[cellFor(run)] as number,
      take: (run) => {
        const counts = new Map<number, number>();
        let cell = cellFor(run);
        for (let place = parts.length - 1; place >= 0; place--) {
          cell = Math.min(cell, reaches[place] as number);
          const part = parts[place];
          if (part === undefined || taken[place * width + cell] !== 1) continue;
          counts.set(part.type, (counts.get(part.type) ?? 0) + part.count);
          cell -= Math.round(part.length / unit);
        }
        return counts;
      },
    };
  };
}

function addPart(
  value: Float64Array,
  taken: Uint8Array,
  part: { from: number; size: number; reach: number; least: number; worth: number },
): void {
  const { from, size, reach, least, worth } = part;
  for (let cell = reach, less = reach - size; cell >= least; cell--, less--) {
    const sum = (value[less] as number) + worth;
    if (sum > (value[cell] as number)) {
      value[cell] = sum;
      taken[from + cell] = 1;
    }
  }
}

/** Fillings by rising length and worth; each is the one before it with a part added. */
function listOf(parts: readonly Part[], longest: number): Fillings | undefined {
  /** By step: the part added, and the step before. */
  const added: number[] = [];
  const before: number[] = [];
  let lengths = [0];
  let worths = [0];
  let steps = [-1];
  let spent = 1;
  for (let place = 0; place < parts.length; place++) {
    const { length, worth: gain } = parts[place] as Part;
    const nextLengths: number[] = [];
    const nextWorths: number[] = [];
    const nextSteps: number[] = [];
    let most = -1;
    for (let having = 0, lacking = 0; lacking < lengths.length || having < lengths.length; ) {
      const longer = having < lengths.length ? (lengths[having] ?? 0) + length : Number.POSITIVE_INFINITY;
      const asIs = lacking < lengths.length ? (lengths[lacking] ?? 0) : Number.POSITIVE_INFINITY;
      if (longer > longest && asIs === Number.POSITIVE_INFINITY) break;
      if (asIs <= longer) {
        const value = worths[lacking] ?? 0;
        if (value > most) {
          // Of two as long, the one worth more.
          if (asIs === nextLengths.at(-1)) drop();
          nextLengths.push(asIs);
          nextWorths.push(value);
          nextSteps.push(steps[lacking] ?? -1);
          most = value;
        }
        lacking += 1;
      } else {
        const value = (worths[having] ?? 0) + gain;
        if (value > most) {
          if (longer === nextLengths.at(-1)) drop();
          nextLengths.push(longer);
          nextWorths.push(value);
          nextSteps.push(added.length);
          added.push(place);
          before.push(steps[having] ?? -1);
          most = value;
        }
        having += 1;
      }
    }
    lengths = nextLengths;
    worths = nextWorths;
    steps = nextSteps;
    spent += lengths.length;
    if (lengths.length > LONGEST_LIST) return undefined;

    function drop(): void {
      nextLengths.pop();
      nextWorths.pop();
      nextSteps.pop();
    }
  }
  return {
    spent,
    worthOf: (run) => worths[entryFor(lengths, run)] ?? 0,
    take: (run) => {
      const counts = new Map<number, number>();
      for (let step = steps[entryFor(lengths, run)] ?? -1; step >= 0; step = before[step] ?? -1) {
        const { type, count } = parts[added[step] ?? 0] as Part;
        counts.set(type, (counts.get(type) ?? 0) + count);
      }
      return counts;
    },
  };
}

/** Multiples of each type that is worth something, longest first so that lists stay short. */
function partsOf(
  own: readonly { readonly type: number; readonly length: number }[],
  longest: number,
  worth: ArrayLike<number>,
  demand: ArrayLike<number>,
): Part[] {
  const parts: Part[] = [];
  for (const { type, length } of own) {
    const one = worth[type] ?? 0;
    if (one <= 0) continue;
    let left = Math.min(demand[type] ?? 0, Math.floor(longest / length));
    for (let count = 1; left > 0; count *= 2) {
      const many = Math.min(count, left);
      parts.push({ type, count: many, length: many * length, worth: many * one });
      left -= many;
    }
  }
  return parts.sort((a, b) => b.length - a.length || a.type - b.type);
}

/** Place of the longest filling that goes into a run. */
function entryFor(lengths: readonly number[], run: number): number {
  let low = 0;
  let high = lengths.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lengths[middle] ?? 0) <= run) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function patternOf(stock: number, runs: readonly number[], fillings: Fillings): BarPattern {
  const filled = runs.map((run) => fillings.take(run));
  const worth = runs.reduce((sum, run) => sum + fillings.worthOf(run), 0);
  return { stock, worth, runs: filled, counts: summed(filled) };
}

export function summed(runs: readonly ReadonlyMap<number, number>[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const run of runs) for (const [type, count] of run) counts.set(type, (counts.get(type) ?? 0) + count);
  return counts;
}
