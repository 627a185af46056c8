import { countChoices, countsCanKeepLook } from "./counts.ts";
import { barredSteps, meetsDucts } from "./duct-strips.ts";
import type { GridRod } from "./grid-rod.ts";
import { type Meetable, meetableLines, Reach } from "./reach.ts";
import { type TouchingStates, touchingStates } from "./touching.ts";

/** Choices per segment, narrowest gap first, with what each can do. */
export type ReachTable = readonly (readonly Reach[])[];

/** The best counts, one choice per segment, and what they are worth; lengths in grid steps. */
export interface CountsFound {
  readonly picks: readonly Reach[];
  readonly linesMet: number;
  readonly spread: number;
  readonly offset: number;
  readonly boards: number;
}

/**
 * Gaps are fractions with small denominators: those of four segments of 60 boards differ by 1e-7 steps at least, and double arithmetic
 * at this size errs by less than 1e-10. So this margin tells equal from unequal.
 */
const SAME_STEPS = 1e-8;

export interface RodSearch {
  readonly rod: GridRod;
  readonly states: TouchingStates;
  readonly table: ReachTable;
}

/** Every choice of counts of every segment, with what it could meet; one table serves searches with and without the look rule. */
export function meetableTable(rod: GridRod): Meetable[][] {
  return rod.segments.map((segment) =>
    countChoices(rod, segment).map((choice) => meetableLines(rod, segment, choice)),
  );
}

/** Sets the search up. Choices whose counts alone break the look rule are left out. */
export function prepareSearch(
  rod: GridRod,
  choices: readonly (readonly Meetable[])[] = meetableTable(rod),
): RodSearch {
  const states = touchingStates(rod);
  const table = choices.map((list, index) => {
    const segment = rod.segments[index];
    const near = segment !== undefined && meetsDucts(rod, segment) ? segment : undefined;
    return list
      .filter(({ choice }) => countsCanKeepLook(choice, rod.maxTouching))
      .map(
        (meetable) => new Reach(states, meetable, near && (() => barredSteps(rod, near, meetable.choice))),
      );
  });
  return { rod, states, table };
}

/**
 * The best counts for all segments together: most secondary lines met, then least spread of gaps, then gaps nearest to the
 * preferred one, then fewest boards, then the earliest in the table. `undefined` where no order of any counts keeps the look rule.
 *
 * Exact: it solves with bounds that favour a choice, sharpens those the winner relies on, and ends when the winner relies on
 * exact values alone; all others are then no better even with the benefit of the doubt.
 */
export function bestCounts(search: RodSearch, table: ReachTable = search.table): CountsFound | undefined {
  for (;;) {
    const found = bestByBounds(search, table);
    if (found === undefined) return undefined;
    const doubtful = found.picks.filter((reach) => !reach.isExact);
    if (doubtful.length === 0) return found;
    for (const reach of doubtful) reach.sharpen();
  }
}

function bestByBounds(search: RodSearch, table: ReachTable): CountsFound | undefined {
  const linesMet = mostLinesMet(search, table);
  if (linesMet < 0) return undefined;
  const useful = withinReachOf(table, linesMet);
  let best: CountsFound | undefined;
  for (const window of narrowestWindows(search, useful, linesMet)) {
    const found = nearestToPreferred(search, useful, { linesMet, ...window });
    if (found !== undefined && (best === undefined || isNearer(found, best))) best = found;
  }
  return best;
}

/** The table without the choices that would miss too many lines even if all other segments met as many as they can. */
function withinReachOf(table: ReachTable, linesMet: number): ReachTable {
  const most = table.map((choices) => Math.max(...choices.map((reach) => reach.mostLines)));
  const total = most.reduce((sum, lines) => sum + lines, 0);
  return table.map((choices, index) =>
    choices.filter((reach) => total - (most[index] ?? 0) + reach.mostLines >= linesMet),
  );
}

function isNearer(
  one: { offset: number; boards: number },
  other: { offset: number; boards: number },
): boolean {
  if (Math.abs(one.offset - other.offset) > SAME_STEPS) return one.offset < other.offset;
  return one.boards < other.boards;
}

/** Most lines met by any choices together, -1 where no choices follow one another at all. */
function mostLinesMet({ rod, states }: RodSearch, table: ReachTable): number {
  let most = new Int16Array(states.count).fill(-1);
  most[0] = 0;
  table.forEach((choices, index) => {
    const begin = rod.segments[index]?.adjoins ? most : afresh(most);
    const next = new Int16Array(states.count).fill(-1);
    begin.forEach((met, state) => {
      if (met < 0) return;
      for (const reach of choices) {
        const hits = reach.from(state);
        for (let end = 0; end < hits.length; end += 1) {
          const more = hits[end] ?? -1;
          if (more >= 0 && met + more > (next[end] ?? -1)) next[end] = met + more;
        }
      }
    });
    most = next;
  });
  return Math.max(...most);
}

function afresh(most: Int16Array<ArrayBuffer>): Int16Array<ArrayBuffer> {
  const begin = new Int16Array(most.length).fill(-1);
  begin[0] = Math.max(...most);
  return begin;
}

interface GapWindow {
  readonly lowest: number;
  readonly spread: number;
}

/** Where `choices`, sorted by gap, first reach `gap`; choices without a gap lie before all others. */
function firstWithGap(choices: readonly Reach[], gap: number): number {
  let low = 0;
  let high = choices.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const here = choices[middle]?.choice.gap ?? 0;
    if (Number.isNaN(here) || here < gap - SAME_STEPS) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Visits the choices without a gap and those whose gap lies in the window. */
function forEachWithin(choices: readonly Reach[], window: GapWindow, visit: (reach: Reach) => void): void {
  for (const reach of choices) {
    if (!Number.isNaN(reach.choice.gap)) break;
    visit(reach);
  }
  const highest = window.lowest + window.spread + SAME_STEPS;
  for (let place = firstWithGap(choices, window.lowest); place < choices.length; place += 1) {
    const reach = choices[place];
    if (reach === undefined || reach.choice.gap > highest) break;
    visit(reach);
  }
}

/** No window from `lowest` on is narrower: every segment takes a gap from there on, or none at all. */
function leastWidth(table: ReachTable, lowest: number): number {
  let width = 0;
  for (const choices of table) {
    const [first] = choices;
    if (first !== undefined && Number.isNaN(first.choice.gap)) continue;
    const next = choices[firstWithGap(choices, lowest)];
    width = Math.max(width, next === undefined ? Number.POSITIVE_INFINITY : next.choice.gap - lowest);
  }
  return width;
}

/**
 * All windows of gaps of the least width in which choices meet so many lines, the lowest first. A long segment has
 * thousands of gaps, so windows are searched from the least that each could be, until none can be narrower than one found.
 */
function narrowestWindows(search: RodSearch, table: ReachTable, linesMet: number): GapWindow[] {
  const gaps = table
    .flatMap((choices) => choices.map((reach) => reach.choice.gap))
    .filter((gap) => !Number.isNaN(gap));
  const starts = new Set(gaps);
  if (starts.size === 0) starts.add(0);
  const ahead = [...starts]
    .map((lowest) => ({ lowest, least: leastWidth(table, lowest) }))
    .sort((one, other) => one.least - other.least || one.lowest - other.lowest);
  let spread = search.rod.band[1] - search.rod.band[0];
  const windows: GapWindow[] = [];
  for (const { lowest, least } of ahead) {
    if (least > spread + SAME_STEPS) break;
    const highest = leastHighestGap(search, table, { lowest, spread, linesMet });
    if (highest === Number.POSITIVE_INFINITY) continue;
    windows.push({ lowest, spread: highest - lowest });
    spread = Math.min(spread, highest - lowest);
  }
  return windows
    .filter((window) => window.spread <= spread + SAME_STEPS)
    .sort((one, other) => one.lowest - other.lowest);
}

/** The least greatest gap with which choices in the window meet so many lines; Infinity where they cannot. */
function leastHighestGap(
  { rod, states }: RodSearch,
  table: ReachTable,
  window: GapWindow & { linesMet: number },
): number {
  const rows = window.linesMet + 1;
  let least = new Float64Array(states.count * rows).fill(Number.POSITIVE_INFINITY);
  least[0] = window.lowest;
  for (const [index, choices] of table.entries()) {
    const next = new Float64Array(least.length).fill(Number.POSITIVE_INFINITY);
    const adjoins = rod.segments[index]?.adjoins ?? false;
    let any = false;
    for (let cell = 0; cell < least.length; cell += 1) {
      const highest = least[cell] ?? Number.POSITIVE_INFINITY;
      if (highest === Number.POSITIVE_INFINITY) continue;
      const met = cell % rows;
      const state = adjoins ? Math.floor(cell / rows) : 0;
      forEachWithin(choices, window, (reach) => {
        const hits = reach.from(state);
        const gap = Number.isNaN(reach.choice.gap) ? highest : Math.max(highest, reach.choice.gap);
        for (let end = 0; end < hits.length; end += 1) {
          const more = hits[end] ?? -1;
          if (more < 0 || met + more >= rows) continue;
          const place = end * rows + met + more;
          if (gap < (next[place] ?? 0)) next[place] = gap;
          any = true;
        }
      });
    }
    if (!any) return Number.POSITIVE_INFINITY;
    least = next;
  }
  let best = Number.POSITIVE_INFINITY;
  for (let state = 0; state < states.count; state += 1)
    best = Math.min(best, least[state * rows + window.linesMet] ?? best);
  return best;
}

interface Step {
  readonly offset: number;
  readonly boards: number;
  readonly reach: Reach | undefined;
  readonly before: Step | undefined;
}

/** Within one window, the choices with gaps nearest to the preferred one, then with fewest boards. */
function nearestToPreferred(
  { rod, states }: RodSearch,
  table: ReachTable,
  window: GapWindow & { linesMet: number },
): CountsFound | undefined {
  const rows = window.linesMet + 1;
  let reached = new Map<number, Step>([[0, { offset: 0, boards: 0, reach: undefined, before: undefined }]]);
  for (const [index, choices] of table.entries()) {
    const next = new Map<number, Step>();
    const adjoins = rod.segments[index]?.adjoins ?? false;
    for (const [cell, before] of reached) {
      const met = cell % rows;
      forEachWithin(choices, window, (reach) => {
        const hits = reach.from(adjoins ? Math.floor(cell / rows) : 0);
        const offset = before.offset + reach.choice.offset;
        const boards = before.boards + reach.choice.boards;
        for (let end = 0; end < hits.length; end += 1) {
          const more = hits[end] ?? -1;
          if (more < 0 || met + more >= rows) continue;
          const place = end * rows + met + more;
          const rival = next.get(place);
          if (rival === undefined || isNearer({ offset, boards }, rival))
            next.set(place, { offset, boards, reach, before });
        }
      });
    }
    reached = next;
  }
  let best: Step | undefined;
  for (let state = 0; state < states.count; state += 1) {
    const step = reached.get(state * rows + window.linesMet);
    if (step !== undefined && (best === undefined || isNearer(step, best))) best = step;
  }
  if (best === undefined) return undefined;
  const picks: Reach[] = [];
  for (let step: Step | undefined = best; step?.reach !== undefined; step = step.before)
    picks.unshift(step.reach);
  return {
    picks,
    linesMet: window.linesMet,
    spread: window.spread,
    offset: best.offset,
    boards: best.boards,
  };
}
