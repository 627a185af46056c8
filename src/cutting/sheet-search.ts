/**
 * A plan for one kind of sheet: a first layout, then ever lower goals for the cost. Cheap goals are tried first, halving the
 * gap to the bound; then the next lower cost is pursued for as long as the budget lasts.
 */
import type { LowerBound } from "./box-bound.ts";
import { coverOf } from "./cover.ts";
import { commonDivisor } from "./divisor.ts";
import { pick, seeded } from "./random.ts";
import { boundByColumns } from "./sheet-columns.ts";
import type { Layout, PieceType, SheetJob } from "./sheet-nodes.ts";
import { costOf } from "./sheet-nodes.ts";
import { largestOffcut } from "./sheet-offcut.ts";
import type { Opening } from "./sheet-ruin.ts";
import { LayoutSearch } from "./sheet-ruin.ts";

export interface SheetSearch extends SheetJob {
  /** Steps of ruin and recreate after the first layout, stretch by stretch, each going on from the best of those before. */
  readonly stretches: readonly number[];
  readonly seed: number;
  /** The search stops when the cost has come down to this. */
  readonly lower: LowerBound;
}

/** The best layout so far, and what none costs less than as far as is known. */
export interface Found {
  readonly layout: Layout;
  readonly lower: LowerBound;
  readonly iterations: number;
  /** Stretches that have ended. */
  readonly stretch: number;
}

const quick = { history: 15, stagnation: 600, patient: false };
const long = { history: 30, stagnation: 4000, patient: true };
/** Below this budget nothing is spent on goals far off. */
const LEAST_FOR_HALVING = 5000;
/** Nor where so many costs lie between that halving them takes long. */
const MOST_LEVELS = 64;
/** Steps spent on the largest offcut once the cost is settled, as a share of the budget. */
const OFFCUT_SHARE = 1 / 4;
/** Sums of worth that a bound by patterns may try for each step of the budget: it then takes about as long. */
const SUMS_A_STEP = 20_000;

/** Gives what it has now and then, at first as soon as all pieces are laid once; may be left at any time. */
export function* searchSheets(search: SheetSearch): Generator<Found, Found> {
  const cover = coverOf(
    search.panels.map(({ cost }, place) => ({ cost, count: search.available[place] ?? 0 })),
  );
  const random = seeded(search.seed);
  const unit = costUnit(search.panels.map(({ cost }) => cost));
  const first = firstLayout(search, random);
  let best = first.layout;
  let { lower } = search;
  let steps = 0;
  let stretch = 0;
  const found = (more = 0): Found => ({
    layout: best,
    lower,
    iterations: first.passes + steps + more,
    stretch,
  });

  function* pursue(limit: number, how: typeof quick, until: number, start = best): Generator<Found, boolean> {
    const trial = new LayoutSearch(search, random, start);
    const run = trial.pursue({ ...how, limit, steps: until - steps });
    let breath = run.next();
    for (; !breath.done; breath = run.next()) yield found(breath.value);
    steps += breath.value.steps;
    if (isBetter(search, trial.layout(), best)) best = trial.layout();
    return breath.value.reached;
  }

  /** Lower and lower goals, first halving what is between the cost and the bound. */
  function* lessen(until: number, budget: number): Generator<Found, void> {
    let least = lower.bound;
    while (!isWaiting(best) && steps < until) {
      const most = costOf(best.sheets) - unit;
      if (most < lower.bound - unit / 1e3) break;
      const levels = (most - least) / unit;
      const halving = budget >= LEAST_FOR_HALVING && levels >= 0 && levels < MOST_LEVELS;
      const middle = Math.floor((least + most) / 2 / unit + 1e-6) * unit;
      const goal = halving ? Math.max(middle, least) : most;
      const reached = yield* pursue(goal, halving ? quick : long, until);
      if (!reached && halving) least = goal + unit;
      yield found();
    }
  }

  const raise = (bound: number): void => {
    if (bound > lower.bound + 1e-9) lower = { bound, how: "guillotine-lp" };
  };

  function* spend(budget: number): Generator<Found, void> {
    const from = steps;
    const until = from + budget;
    if (isWaiting(best)) yield* pursue(Number.POSITIVE_INFINITY, long, until);
    yield* lessen(from + budget / 4, budget);
    const goal = costOf(best.sheets);
    if (!isWaiting(best) && goal > lower.bound + unit / 1e3) {
      const run = boundByColumns(search, { goal, known: lower.bound, work: budget * SUMS_A_STEP, cover });
      let round = run.next();
      for (; !round.done; round = run.next()) {
        raise(round.value);
        yield found();
      }
      if (round.value !== undefined) raise(round.value.bound);
      const rounded = round.value?.rounded;
      if (rounded !== undefined && lower.bound < goal && isFree(search)) {
        yield* pursue(lower.bound, quick, until, rounded);
      }
    }
    yield* lessen(until, budget);
    if (!isWaiting(best) && isFree(search)) {
      const wish = { job: search, layout: best, steps: budget * OFFCUT_SHARE, random };
      const run = largestOffcut(wish);
      let step = run.next();
      for (; !step.done; step = run.next()) yield found(step.value);
      best = step.value;
    }
  }

  yield found();
  for (const budget of search.stretches) {
    yield* spend(budget);
    stretch += 1;
    yield found();
  }
  return found();
}

/** Cuts may turn as often and lie as far apart as they like. */
function isFree({ stages, firstCuts }: SheetJob): boolean {
  return stages === Number.POSITIVE_INFINITY && firstCuts === Number.POSITIVE_INFINITY;
}

const ranks: readonly ((type: PieceType) => number)[] = [
  ({ width, height }) => width * height,
  ({ width, height }) => Math.max(width, height),
  ({ height }) => height,
  ({ width }) => width,
  ({ width, height }) => Math.min(width, height),
];

/** The best of laying all pieces once for each rule of which sheet to open. */
function firstLayout(
  search: SheetSearch,
  random: () => number,
): { readonly layout: Layout; readonly passes: number } {
  const by = (key: (panel: SheetJob["panels"][number]) => number): Opening => {
    return (_, panels) =>
      panels.reduce<number | undefined>((best, index) => {
        const [one, other] = [search.panels[index], best === undefined ? undefined : search.panels[best]];
        return one !== undefined && (other === undefined || key(one) < key(other)) ? index : best;
      }, undefined);
  };
  const openings = [
    by(({ cost, width, height }) => cost / width / height),
    by(({ width, height }) => -width * height),
    by(({ cost }) => cost),
    (_: PieceType, panels: readonly number[]) => panels[pick(random, panels.length)],
  ];
  let best: Layout | undefined;
  let passes = 0;
  for (const open of search.panels.length > 1 ? openings : openings.slice(0, 1)) {
    for (const rank of [undefined, ...ranks]) {
      passes += 1;
      const trial = new LayoutSearch(search, random);
      trial.recreate(Number.POSITIVE_INFINITY, open, { rank: rank && search.types.map(rank) });
      trial.downsize();
      if (best === undefined || isBetter(search, trial.layout(), best)) best = trial.layout();
    }
  }
  return { layout: best ?? { sheets: [], waiting: [] }, passes };
}

/** Less left out, then cheaper. */
function isBetter(job: SheetJob, a: Layout, b: Layout): boolean {
  const left = areaWaiting(job, a) - areaWaiting(job, b);
  return left < 0 || (left === 0 && costOf(a.sheets) < costOf(b.sheets));
}

function areaWaiting({ types }: SheetJob, { waiting }: Layout): number {
  return types.reduce((area, { width, height }, index) => area + width * height * (waiting[index] ?? 0), 0);
}

function isWaiting({ waiting }: Layout): boolean {
  return waiting.some((count) => count > 0);
}

/** By how much one plan can be cheaper than another, at least. */
function costUnit(costs: readonly number[]): number {
  const millionths = costs.map((cost) => Math.round(cost * 1e6)).filter((cost) => cost > 0);
  return millionths.length === 0 ? 1 : commonDivisor(millionths) / 1e6;
}
