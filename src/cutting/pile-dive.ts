/**
 * A first cutting of a pile from patterns of whole boards used by fractions: those used whole are kept, else the one used most, and
 * the rest is solved anew. Of pieces left out and boards used it finds what few searches find; which boards look alike it does not know.
 */
import { Columns, type Pattern } from "./columns.ts";
import {
  type BoardPattern,
  boardWorth,
  columnJob,
  kindsOf,
  type PileKinds,
  type PileSizes,
  solve,
  within,
} from "./pile-columns.ts";

export interface CutStrip {
  readonly width: number;
  /** Pieces by their place in the list, run by run. */
  readonly pieces: readonly (readonly number[])[];
}

interface Rest {
  readonly demand: readonly number[];
  readonly counts: readonly number[];
  readonly chosen: readonly BoardPattern[];
}

/**
 * By board, undefined where it stays whole.
 *
 * @param leftOut what an area of pieces left out weighs, as a multiple of that of boards
 * @param work sums that it may take in all, about
 */
export function divePile(
  sizes: PileSizes,
  { leftOut, work }: { readonly leftOut: number; readonly work: number },
): (readonly CutStrip[] | undefined)[] {
  const kinds = kindsOf(sizes);
  const worths = boardWorth(sizes, kinds);
  const jobOf = ({ demand, counts }: Rest) =>
    columnJob(kinds, worths, {
      boards: kinds.boards.map(({ area }) => area),
      out: kinds.types.map(({ area }) => leftOut * area),
      demand,
      counts,
    });
  let rest: Rest = {
    demand: kinds.types.map(({ places }) => places.length),
    counts: kinds.boards.map(({ places }) => places.length),
    chosen: [],
  };
  let columns = new Columns(jobOf(rest));
  for (let left = work; left > 0; ) {
    left -= solve(columns, worths, left);
    const next = taken(rest, columns, kinds.boards.length);
    if (next === rest) break;
    rest = next;
    const { demand } = rest;
    columns = columns.forRest(jobOf(rest), (pattern: Pattern) => within(pattern as BoardPattern, demand));
  }
  return cutBoards(rest.chosen, kinds, sizes.boards.length);
}

/** The boards that are used whole; where none is, the one used most. */
function taken(rest: Rest, columns: Columns, boards: number): Rest {
  const used = columns
    .solution()
    .filter(({ pattern, level }) => pattern.stock < boards && level > 1e-6)
    .sort((a, b) => b.level - a.level);
  const whole = used.filter(({ level }) => level > 1 - 1e-6);
  let next = rest;
  for (const { pattern, level } of whole.length > 0 ? whole : used.slice(0, 1)) {
    for (let count = Math.max(1, Math.floor(level + 1e-6)); count > 0; count--)
      next = take(next, pattern as BoardPattern);
  }
  return next;
}

function take(rest: Rest, pattern: BoardPattern): Rest {
  const cut = within(pattern, rest.demand);
  if (cut.counts.size === 0 || (rest.counts[cut.stock] ?? 0) <= 0) return rest;
  return {
    demand: rest.demand.map((count, type) => count - (cut.counts.get(type) ?? 0)),
    counts: rest.counts.map((count, place) => count - (place === cut.stock ? 1 : 0)),
    chosen: [...rest.chosen, cut],
  };
}

/** Boards and pieces by their places in place of their kinds. */
function cutBoards(
  chosen: readonly BoardPattern[],
  { types, boards }: PileKinds,
  count: number,
): (readonly CutStrip[] | undefined)[] {
  const cut = Array.from({ length: count }, (): readonly CutStrip[] | undefined => undefined);
  const used = types.map(() => 0);
  const ripped = boards.map(() => 0);
  for (const { stock, strips } of chosen) {
    const place = boards[stock]?.places[ripped[stock] ?? 0];
    ripped[stock] = (ripped[stock] ?? 0) + 1;
    if (place === undefined) continue;
    cut[place] = strips.map(({ width, runs }) => ({
      width,
      pieces: runs.map((run) =>
        [...run].flatMap(([type, many]) => {
          const from = used[type] ?? 0;
          used[type] = from + many;
          return types[type]?.places.slice(from, from + many) ?? [];
        }),
      ),
    }));
  }
  return cut;
}
