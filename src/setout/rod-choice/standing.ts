import { bestFew } from "../rod/alternatives.ts";
import { countsCanKeepLook } from "../rod/counts.ts";
import type { GridRod } from "../rod/grid-rod.ts";
import { type CountsFound, meetableTable, prepareSearch } from "../rod/search.ts";
import { narrowestRange } from "./spread-bound.ts";

/** A set of widths with what is known of its best rod: a bound at first, better than or equal to it, its own worth at last. */
export interface Standing {
  /** In grid steps, the narrower first. */
  readonly widths: readonly number[];
  /** `counts`: by counts alone; `lines`: by what counts could meet as well; `exact`: solved. */
  readonly known: "counts" | "lines" | "exact";
  readonly missed: number;
  /** In millionths of a grid step, so that equal spreads compare equal whatever the noise of their divisions. */
  readonly spread: number;
  /** 1 where no supply was given. */
  readonly yield: number;
  readonly offset: number;
  readonly boards: number;
  /** What each choice of counts could meet, kept from one look to the next. */
  readonly choices?: MeetableTable;
  readonly found?: CountsFound;
}

type MeetableTable = ReturnType<typeof meetableTable>;

const PARTS_OF_STEP = 1e6;

/** A spread as it stands in a `Standing`; a bound is taken a part lower, so that noise cannot put it above what it bounds. */
export function spreadParts(steps: number, known: Standing["known"]): number {
  const parts = Math.round(steps * PARTS_OF_STEP);
  return known === "exact" ? parts : Math.max(0, parts - 1);
}

/** The order of the ranking; what is less known goes first where all else is equal, so that it is looked into. */
export function isBefore(one: Standing, other: Standing): boolean {
  if (one.missed !== other.missed) return one.missed < other.missed;
  if (one.spread !== other.spread) return one.spread < other.spread;
  if (one.yield !== other.yield) return one.yield > other.yield;
  if (one.known !== other.known && (one.known === "exact" || other.known === "exact"))
    return one.known !== "exact";
  if (Math.abs(one.offset - other.offset) > 1 / PARTS_OF_STEP) return one.offset < other.offset;
  if (one.boards !== other.boards) return one.boards < other.boards;
  return compareWidths(one.widths, other.widths) < 0;
}

function compareWidths(one: readonly number[], other: readonly number[]): number {
  return (one[0] ?? 0) - (other[0] ?? 0) || (one[1] ?? 0) - (other[1] ?? 0);
}

/** Looks further into a set: from a bound to a better one or to its best rod; nothing where it has none. */
export function lookInto(
  standing: Standing,
  rod: GridRod,
  yieldOf: (found: CountsFound) => number,
): Standing | undefined {
  const choices = standing.choices ?? meetableTable(rod);
  if (standing.known === "counts" && rod.lines.length > 0)
    return { ...standing, choices, known: "lines", ...linesBound(rod, choices) };
  const found = bestOfAllWidths(rod, choices);
  return (
    found && {
      widths: standing.widths,
      known: "exact",
      missed: rod.lines.length - found.linesMet,
      spread: spreadParts(found.spread, "exact"),
      yield: yieldOf(found),
      offset: found.offset,
      boards: found.boards,
      found,
    }
  );
}

/** The fewest lines missed that counts allow, and the least spread among the counts that could miss so few. */
function linesBound(rod: GridRod, choices: MeetableTable): Pick<Standing, "missed" | "spread"> {
  const kept = choices.map((list) => list.filter(({ choice }) => countsCanKeepLook(choice, rod.maxTouching)));
  const most = kept.map((list) => Math.max(...list.map(({ mostLines }) => mostLines)));
  const total = most.reduce((sum, lines) => sum + lines, 0);
  const met = Math.min(total, rod.lines.length);
  const lists = kept.flatMap((list, index) => {
    const able = list.filter(({ mostLines }) => total - (most[index] ?? 0) + mostLines >= met);
    // A segment that one board fills without a gap holds the others to nothing.
    const isFree = able.some(({ choice }) => Number.isNaN(choice.gap));
    return isFree ? [] : [able.map(({ choice }) => choice.gap)];
  });
  return { missed: rod.lines.length - met, spread: spreadParts(narrowestRange(lists), "lines") };
}

/** The best rod that uses every width at least once: one that does without a width belongs to the smaller set. */
function bestOfAllWidths(rod: GridRod, choices: MeetableTable): CountsFound | undefined {
  const usesAll = ({ picks }: CountsFound): boolean =>
    rod.widths.every((_, width) => picks.some(({ choice }) => (choice.counts[width] ?? 0) > 0));
  const search = prepareSearch(rod, choices);
  for (let others = 0; ; others = 2 * others + 1) {
    const few = bestFew(search, others);
    const found = few.find(usesAll);
    if (found !== undefined || few.length <= others) return found;
  }
}
