/** The strongest bound on a sheet plan, by patterns of cuts right through, and a layout rounded from what proves it. */
import { Columns, type Pattern } from "./columns.ts";
import type { Cover } from "./cover.ts";
import { guillotineWorth } from "./guillotine-worth.ts";
import type { Layout, SheetJob } from "./sheet-nodes.ts";
import { clear, filledRegions, Sheet } from "./sheet-nodes.ts";

interface SheetPattern extends Pattern {
  readonly sheet: Sheet;
}

export interface ColumnBound {
  readonly bound: number;
  /** Whole sheets of the patterns that the bound rests on; not all pieces are laid. */
  readonly rounded: Layout;
}

/** Sums that one reckoning of what patterns are worth may try; above this the bound is not sought. */
const MOST_EFFORT = 6e7;

/**
 * Gives the bound so far after each round.
 * @param goal cost of a plan that is known; the search ends when the bound comes up to it
 * @param known a bound that is known; the search ends when patterns have come down to it, for then they can't raise it
 * @param work how many sums may be tried in all
 */
export function* boundByColumns(
  job: SheetJob,
  { goal, known, work, cover }: { goal: number; known: number; work: number; cover: Cover },
): Generator<number, ColumnBound | undefined> {
  const worths = guillotineWorth(job.types, job.panels);
  if (worths === undefined || worths.effort > Math.min(MOST_EFFORT, work)) return undefined;
  const columns = new Columns({
    demand: job.types.map(({ demands }) => demands.length),
    stock: job.panels.map(({ cost }, place) => ({ cost, count: job.available[place] ?? 0 })),
    best: (worth) => worths.best(worth),
  });
  const left = (rounds: number): number => work - rounds * worths.effort - columns.spent;
  for (let rounds = 0; left(rounds) > 0 && cover.roundUp(columns.bound) < goal - 1e-9; rounds++) {
    if (!columns.round(left(rounds))) break;
    yield cover.roundUp(columns.bound);
    const { value } = columns;
    if (value !== undefined && cover.roundUp(value) < known + 1e-9) break;
  }
  return { bound: cover.roundUp(columns.bound), rounded: roundedDown(job, columns) };
}

/** Each pattern in use as often as it is used whole; pieces that are then laid more than once are taken off again. */
function roundedDown(job: SheetJob, columns: Columns): Layout {
  const waiting = job.types.map(({ demands }) => demands.length);
  const sheets: Sheet[] = [];
  for (const { pattern, level } of columns.solution()) {
    for (let count = Math.floor(level + 1e-6); count > 0; count--) {
      const sheet = new Sheet((pattern as SheetPattern).sheet.panel, 0, (pattern as SheetPattern).sheet);
      for (const region of [sheet.root, ...filledRegions(sheet.root, [])]) {
        if (region.piece < 0) continue;
        if ((waiting[region.piece] ?? 0) > 0) waiting[region.piece] = (waiting[region.piece] ?? 0) - 1;
        else clear(sheet, region, () => undefined);
      }
      if (!sheet.root.isLeftover) sheets.push(sheet);
    }
  }
  return { sheets, waiting };
}
