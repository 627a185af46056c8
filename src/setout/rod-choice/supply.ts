import { fromGridSteps } from "../../units/length.ts";
import type { GridRod } from "../rod/grid-rod.ts";
import type { CountsFound } from "../rod/search.ts";
import type { WidthSupply, WidthsQuestion } from "./question.ts";

/** What the stock gives, asked once a width. Widths in grid steps. */
export interface Supply {
  /** Whether the stock gives any of the width at all. */
  readonly reaches: (width: number) => boolean;
  /** No rod of these widths makes better use of the timber; 1 without a supply. */
  readonly bestYield: (widths: readonly number[]) => number;
  /** Part of the timber that becomes board: the area of the boards over the area they are sawn from; 1 without a supply. */
  readonly yieldOf: (rod: GridRod, found: CountsFound) => number;
  /** What the rod needs beyond the stock. */
  readonly shortOf: (
    rod: GridRod,
    found: CountsFound,
  ) => { readonly width: number; readonly metres: number }[];
}

export function supplyOf({ supply, metresPerCourse }: WidthsQuestion): Supply {
  if (supply === undefined)
    return { reaches: () => true, bestYield: () => 1, yieldOf: () => 1, shortOf: () => [] };
  const known = new Map<number, WidthSupply>();
  const of = (width: number): WidthSupply => {
    const given = known.get(width) ?? supply(fromGridSteps(width));
    known.set(width, given);
    return given;
  };
  /** Boards of each regular width; a ripped board is sawn from the widest one. */
  const used = (
    rod: GridRod,
    { picks }: CountsFound,
  ): { readonly width: number; readonly count: number }[] => {
    const counts = rod.widths.map((_, width) =>
      picks.reduce((sum, { choice }) => sum + (choice.counts[width] ?? 0), 0),
    );
    const ripped = counts.slice(rod.regularWidths).reduce((sum, count) => sum + count, 0);
    const regular = rod.widths.slice(0, rod.regularWidths);
    const widest = Math.max(...regular);
    return regular.map((width, index) => ({
      width,
      count: (counts[index] ?? 0) + (width === widest ? ripped : 0),
    }));
  };
  return {
    reaches: (width) => of(width).metres > 0 && of(width).yield > 0,
    bestYield: (widths) => Math.max(...widths.map((width) => of(width).yield)),
    yieldOf: (rod, found) => {
      const boards = used(rod, found).filter(({ count }) => count > 0);
      const timber = boards.reduce((sum, { width, count }) => sum + (width * count) / of(width).yield, 0);
      const area = found.picks.reduce((sum, { choice }) => sum + choice.timber, 0);
      return area / timber;
    },
    shortOf: (rod, found) =>
      metresPerCourse === undefined
        ? []
        : used(rod, found).flatMap(({ width, count }) => {
            const metres = count * metresPerCourse - of(width).metres;
            return count > 0 && metres > 0 ? [{ width: fromGridSteps(width), metres }] : [];
          }),
  };
}
