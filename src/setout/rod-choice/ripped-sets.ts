import type { GridRod } from "../rod/grid-rod.ts";
import type { RippedBoard } from "../rod/problem.ts";
import { rippedBoards } from "../rod/rip-board.ts";
import { bestCounts, type CountsFound, prepareSearch } from "../rod/search.ts";

/** A set of widths without a rod, with what speaks for mending it by ripping. */
export interface SetWithout {
  /** In grid steps. */
  readonly widths: readonly number[];
  readonly unfilled: number;
  readonly spread: number;
}

export interface RippedSet {
  readonly widths: readonly number[];
  readonly boards: readonly RippedBoard[];
  readonly rod: GridRod;
  readonly found: CountsFound;
}

/** Most sets tried with ripped boards; each is a search of its own. */
const MOST_TRIED = 60;

/**
 * Sets that no rod can be made of, with as few ripped boards as make one possible: fewest boards first, then fewest lines missed, then
 * least spread. The likeliest sets are tried: those with the fewest segments unfilled and the least spread in the others.
 */
export function rippedSets(
  sets: readonly SetWithout[],
  rodFor: (widths: readonly number[], ripped?: readonly RippedBoard[]) => GridRod,
): { readonly ranked: readonly RippedSet[]; readonly tried: number } {
  const likeliest = [...sets]
    .sort((one, other) => one.unfilled - other.unfilled || one.spread - other.spread)
    .slice(0, MOST_TRIED);
  const ranked = likeliest
    .flatMap(({ widths }): RippedSet[] => {
      const [change] = rippedBoards(rodFor(widths));
      if (change?.kind !== "rip") return [];
      const rod = rodFor(widths, change.boards);
      const found = bestCounts(prepareSearch(rod));
      return found === undefined ? [] : [{ widths, boards: change.boards, rod, found }];
    })
    .sort(
      (one, other) =>
        one.boards.length - other.boards.length ||
        other.found.linesMet - one.found.linesMet ||
        one.found.spread - other.found.spread,
    );
  return { ranked, tried: likeliest.length };
}
