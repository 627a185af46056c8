import { countChoices } from "./counts.ts";
import type { GridRod } from "./grid-rod.ts";
import { bestCounts, meetableTable, prepareSearch } from "./search.ts";

/** How many candidates of one kind of change are worked before the search for that change gives up. */
export const MOST_TRIALS = 64;

/** Whether some counts and order keep the hard rules; secondary lines, which are only wished for, are left aside. */
export function isFeasible(rod: GridRod): boolean {
  const withoutLines = { ...rod, lines: [] };
  const choices = meetableTable(withoutLines);
  if (choices.some((list) => list.length === 0)) return false;
  return bestCounts(prepareSearch(withoutLines, choices)) !== undefined;
}

/** Places of the segments that no counts fit. */
export function unfilledSegments(rod: GridRod): number[] {
  return rod.segments.flatMap((segment, index) => (countChoices(rod, segment).length === 0 ? [index] : []));
}
