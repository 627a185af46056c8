/**
 * The most that pieces on one bar can be worth, each no oftener than it is wanted: bounded knapsacks by dynamic programming
 * (Martello & Toth, Knapsack Problems, Wiley 1990, ch. 3), multiples split into powers of two. One table answers for all bars
 * that serve the same pieces. Runs of a bar are filled apart, so that pieces may be counted once too often in several: a bound
 * is then lower, never wrong. Exact in whole numbers.
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
  /** Steps of one reckoning. */
  readonly effort: number;
  /** For whole-number worths and the pieces wanted of each type: the best pattern of each bar. */
  best(worth: ArrayLike<number>, demand: ArrayLike<number>): BarPattern[];
}

/** Cells of a table, above which nothing is reckoned. */
const MOST_CELLS = 120_000;

/** @param unit a length that divides all lengths. Undefined where the tables would be too long. */
export function barWorth(
  types: readonly PieceKind[],
  bars: readonly BarType[],
  unit: number,
): BarWorth | undefined {
  const groups = new Map<ReadonlySet<number>, number[]>();
  bars.forEach(({ serves }, place) => {
    const same = groups.get(serves);
    if (same === undefined) groups.set(serves, [place]);
    else same.push(place);
  });
  const tables = [...groups].map(([serves, places]) => {
    const longest = places.reduce(
      (most, place) => (bars[place]?.runs ?? []).reduce((long, run) => Math.max(long, run), most),
      0,
    );
    const cells = Math.floor(longest / unit);
    const own = types.flatMap(({ length, kind }, type) =>
      serves.has(kind) && length <= longest ? [{ type, cells: Math.round(length / unit) }] : [],
    );
    return { places, cells, own };
  });
  if (tables.some(({ cells }) => cells > MOST_CELLS)) return undefined;
  return {
    effort: tables.reduce((sum, { cells, own }) => sum + cells * (own.length + 1), 0),
    best: (worth, demand) =>
      tables.flatMap(({ places, cells, own }) => {
        const table = knapsack(own, cells, worth, demand);
        return places.map((stock) => patternOf(stock, bars[stock]?.runs ?? [], unit, table));
      }),
  };
}

interface Table {
  readonly value: Float64Array;
  take(cells: number): Map<number, number>;
}

function knapsack(
  own: readonly { readonly type: number; readonly cells: number }[],
  cells: number,
  worth: ArrayLike<number>,
  demand: ArrayLike<number>,
): Table {
  const parts: { readonly type: number; readonly count: number; readonly cells: number }[] = [];
  for (const { type, cells: one } of own) {
    if ((worth[type] ?? 0) <= 0) continue;
    let left = Math.min(demand[type] ?? 0, Math.floor(cells / one));
    for (let count = 1; left > 0; count *= 2) {
      const many = Math.min(count, left);
      parts.push({ type, count: many, cells: many * one });
      left -= many;
    }
  }
  const width = cells + 1;
  const value = new Float64Array(width);
  const taken = new Uint8Array(parts.length * width);
  parts.forEach((part, place) => {
    const gain = part.count * (worth[part.type] ?? 0);
    const at = place * width;
    for (let cell = cells; cell >= part.cells; cell--) {
      const sum = (value[cell - part.cells] ?? 0) + gain;
      if (sum > (value[cell] ?? 0)) {
        value[cell] = sum;
        taken[at + cell] = 1;
      }
    }
  });
  return {
    value,
    take: (most) => {
      const counts = new Map<number, number>();
      let cell = most;
      for (let place = parts.length - 1; place >= 0; place--) {
        const part = parts[place];
        if (part === undefined || taken[place * width + cell] !== 1) continue;
        counts.set(part.type, (counts.get(part.type) ?? 0) + part.count);
        cell -= part.cells;
      }
      return counts;
    },
  };
}

function patternOf(stock: number, runs: readonly number[], unit: number, table: Table): BarPattern {
  const filled = runs.map((run) => table.take(Math.floor(run / unit)));
  const worth = runs.reduce((sum, run) => sum + (table.value[Math.floor(run / unit)] ?? 0), 0);
  return { stock, worth, runs: filled, counts: summed(filled) };
}

export function summed(runs: readonly ReadonlyMap<number, number>[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const run of runs) for (const [type, count] of run) counts.set(type, (counts.get(type) ?? 0) + count);
  return counts;
}
