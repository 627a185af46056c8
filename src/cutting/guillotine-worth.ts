/**
 * The most that pieces cut from a sheet by straight cuts right through can be worth, each as often as one likes: Gilmore &
 * Gomory, Operations Research 13 (1965) 94-120, by dynamic programming over the sizes that matter. Those are sums of pieces'
 * sides (Herz, IBM J. Research and Development 16 (1972) 462-469), of which only the ones kept that a cut of a whole sheet
 * leads to, both its parts as large as they can be (raster points: Terno, Lindemann & Scheithauer, Zuschnittprobleme und ihre
 * praktische Lösung, 1987). Exact in whole numbers.
 */
import type { PricedPattern } from "./columns.ts";
import type { Panel, PieceType, Region } from "./sheet-nodes.ts";
import { joinLeftovers, lay, partOff, Sheet } from "./sheet-nodes.ts";

/** Sizes along one axis, rising, with the pairs that a cut of each leaves: `left[i]` and `right[i]` from `start[s]` on. */
interface Raster {
  readonly sizes: readonly number[];
  readonly start: Int32Array;
  readonly left: Int32Array;
  readonly right: Int32Array;
}

export interface GuillotineWorth {
  /** Steps of one reckoning, to judge whether it is worth while. */
  readonly effort: number;
  /** Patterns of greatest worth for whole-number worths of the types, one a panel, each with its layout. */
  best(worth: ArrayLike<number>): (PricedPattern & { readonly sheet: Sheet })[];
}

/** Undefined where too many sizes matter. */
export function guillotineWorth(
  types: readonly PieceType[],
  panels: readonly Panel[],
): GuillotineWorth | undefined {
  // Panels on which nothing may be turned see other pieces than the rest.
  const groups = [true, false].flatMap((turns) => {
    const places = panels.flatMap(({ turnable }, place) => (turnable === turns ? [place] : []));
    return places.length === 0 ? [] : [tableOf(types, panels, places, turns)];
  });
  if (!groups.every((group) => group !== undefined)) return undefined;
  return {
    effort: groups.reduce((sum, { effort }) => sum + effort, 0),
    best: (worth) => groups.flatMap((group) => group.best(worth)),
  };
}

function tableOf(
  types: readonly PieceType[],
  panels: readonly Panel[],
  places: readonly number[],
  turns: boolean,
): GuillotineWorth | undefined {
  const ways = types.flatMap(({ width, height, turnable }, type) =>
    turns && turnable && width !== height
      ? [
          { type, width, height },
          { type, width: height, height: width },
        ]
      : [{ type, width, height }],
  );
  const own = places.map((place) => ({ place, panel: panels[place] as Panel }));
  const fitting = ways.filter((way) =>
    own.some(({ panel }) => way.width <= panel.width && way.height <= panel.height),
  );
  const across = rasterOf(
    fitting.map(({ width }) => width),
    own.map(({ panel }) => panel.width),
  );
  const up = rasterOf(
    fitting.map(({ height }) => height),
    own.map(({ panel }) => panel.height),
  );
  if (across === undefined || up === undefined) return undefined;
  const columns = across.sizes.length;
  const rows = up.sizes.length;
  const value = new Float64Array(columns * rows);
  /** How the value comes about: a way + 1, or, below nought, a cut: -1 - 2i along x, -2 - 2i along y; 0: as one size less. */
  const how = new Int32Array(columns * rows);

  const fill = (worth: ArrayLike<number>): void => {
    value.fill(0);
    how.fill(0);
    fitting.forEach((way, index) => {
      const cell = placeFrom(up.sizes, way.height) * columns + placeFrom(across.sizes, way.width);
      const one = worth[way.type] ?? 0;
      if (one > (value[cell] ?? 0)) {
        value[cell] = one;
        how[cell] = index + 1;
      }
    });
    for (let row = 0; row < rows; row++) {
      const firstUp = up.start[row] ?? 0;
      const lastUp = up.start[row + 1] ?? 0;
      for (let column = 0; column < columns; column++) {
        const cell = row * columns + column;
        let best = value[cell] ?? 0;
        let via = how[cell] ?? 0;
        const less = column > 0 ? (value[cell - 1] ?? 0) : 0;
        const lower = row > 0 ? (value[cell - columns] ?? 0) : 0;
        if (less > best) {
          best = less;
          via = LESS_WIDE;
        }
        if (lower > best) {
          best = lower;
          via = LESS_HIGH;
        }
        const base = row * columns;
        const lastAcross = across.start[column + 1] ?? 0;
        for (let cut = across.start[column] ?? 0; cut < lastAcross; cut++) {
          const sum =
            (value[base + (across.left[cut] ?? 0)] ?? 0) + (value[base + (across.right[cut] ?? 0)] ?? 0);
          if (sum > best) {
            best = sum;
            via = -1 - 2 * cut;
          }
        }
        for (let cut = firstUp; cut < lastUp; cut++) {
          const sum =
            (value[(up.left[cut] ?? 0) * columns + column] ?? 0) +
            (value[(up.right[cut] ?? 0) * columns + column] ?? 0);
          if (sum > best) {
            best = sum;
            via = -2 - 2 * cut;
          }
        }
        value[cell] = best;
        how[cell] = via;
      }
    }
  };

  interface Laying {
    readonly sheet: Sheet;
    readonly counts: Map<number, number>;
  }

  /** Lays the best pattern for a size into a region at least as large. */
  const layOut = (laying: Laying, region: Region, column: number, row: number): void => {
    const cell = row * columns + column;
    const via = how[cell] ?? 0;
    if (via === 0) laying.sheet.leftovers.push(region);
    else if (via === LESS_WIDE) layOut(laying, region, column - 1, row);
    else if (via === LESS_HIGH) layOut(laying, region, column, row - 1);
    else if (via > 0) {
      const { type, width, height } = fitting[via - 1] as (typeof fitting)[number];
      const turned = width !== types[type]?.width;
      laying.counts.set(type, (laying.counts.get(type) ?? 0) + 1);
      const at = laying.sheet.leftovers.push(region) - 1;
      lay(laying.sheet, at, { piece: type, turned, width, height, first: "x" });
    } else if (via % 2 !== 0) {
      const cut = (-1 - via) / 2;
      const left = across.left[cut] ?? 0;
      const part = partOff(laying.sheet, region, "x", across.sizes[left] ?? 0);
      const rest = laying.sheet.leftovers.pop() ?? part;
      layOut(laying, part, left, row);
      layOut(laying, rest, across.right[cut] ?? 0, row);
    } else {
      const cut = (-2 - via) / 2;
      const lower = up.left[cut] ?? 0;
      const part = partOff(laying.sheet, region, "y", up.sizes[lower] ?? 0);
      const rest = laying.sheet.leftovers.pop() ?? part;
      layOut(laying, part, column, lower);
      layOut(laying, rest, column, up.right[cut] ?? 0);
    }
  };

  return {
    effort: columns * across.left.length + rows * up.left.length,
    best: (worth) => {
      fill(worth);
      return own.flatMap(({ place, panel }) => {
        const column = placeUpTo(across.sizes, panel.width);
        const row = placeUpTo(up.sizes, panel.height);
        if (column < 0 || row < 0) return [];
        const sheet = new Sheet(panel, 0);
        const counts = new Map<number, number>();
        sheet.leftovers.length = 0;
        layOut({ sheet, counts }, sheet.root, column, row);
        joinLeftovers(sheet);
        return [{ stock: place, worth: value[row * columns + column] ?? 0, counts, sheet }];
      });
    },
  };
}

const MOST_SUMS = 2500;
const MOST_PAIRS = 400_000;
const LESS_WIDE = 1_000_000_001;
const LESS_HIGH = 1_000_000_002;

/** The sizes that cuts of the whole lead to, and the pairs of sizes that each is cut into. */
function rasterOf(sides: readonly number[], wholes: readonly number[]): Raster | undefined {
  const most = wholes.reduce((most, one) => Math.max(most, one), 0);
  const sums = sumsOf(sides, most);
  if (sums === undefined) return undefined;
  const down = (size: number) => sums[placeUpTo(sums, size)];
  const pairs = new Map<number, (readonly [number, number])[]>();
  let number = 0;
  const open = wholes.flatMap((whole) => down(whole) ?? []);
  while (open.length > 0) {
    const size = open.pop();
    if (size === undefined || pairs.has(size)) continue;
    const found = new Map<number, readonly [number, number]>();
    for (const sum of sums) {
      if (2 * sum > size) break;
      const right = down(size - sum);
      const left = right === undefined ? undefined : down(size - right);
      // Either part is as large as it can be beside the other, so nothing that fits another pair fits worse here.
      if (right !== undefined && left !== undefined) found.set(left * 2 ** 26 + right, [left, right]);
    }
    pairs.set(size, [...found.values()]);
    number += found.size;
    if (number > MOST_PAIRS) return undefined;
    for (const [left, right] of found.values()) open.push(left, right);
  }
  const sizes = [...pairs.keys()].sort((a, b) => a - b);
  const place = new Map(sizes.map((size, index) => [size, index]));
  const start = new Int32Array(sizes.length + 1);
  const flat = sizes.flatMap((size, index) => {
    const own = pairs.get(size) ?? [];
    start[index + 1] = (start[index] ?? 0) + own.length;
    return own;
  });
  return {
    sizes,
    start,
    left: Int32Array.from(flat, ([left]) => place.get(left) ?? 0),
    right: Int32Array.from(flat, ([, right]) => place.get(right) ?? 0),
  };
}

/** All sums of sides, each as often as one likes, up to the most; rising. Undefined where they are too many. */
function sumsOf(sides: readonly number[], most: number): number[] | undefined {
  const reached = new Set<number>();
  const queue: number[] = [];
  const distinct = [...new Set(sides)].sort((a, b) => a - b);
  for (let at = -1; at < queue.length; at++) {
    const from = at < 0 ? 0 : (queue[at] ?? 0);
    for (const side of distinct) {
      const sum = from + side;
      if (sum > most) break;
      if (reached.has(sum)) continue;
      if (reached.size === MOST_SUMS) return undefined;
      reached.add(sum);
      queue.push(sum);
    }
  }
  return queue.sort((a, b) => a - b);
}

/** Place of the largest size not above the given one; -1 where there is none. */
function placeUpTo(sizes: readonly number[], size: number): number {
  let low = 0;
  let high = sizes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sizes[middle] ?? 0) <= size) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Place of the smallest size not below the given one. */
function placeFrom(sizes: readonly number[], size: number): number {
  const below = placeUpTo(sizes, size);
  return sizes[below] === size ? below : below + 1;
}
