/**
 * A plan for bars of one section: the best of several fillings, then a seeded search that empties a few bars and
 * fills anew, then each bar's pieces on the cheapest bar that takes them all.
 */

import { dive } from "./bar-dive.ts";
import type { BarType, FilledBar, Filling, FillJob, Piece } from "./bar-fill.ts";
import { bestFit, fullestBars } from "./bar-fill.ts";
import type { LowerBound } from "./box-bound.ts";
import { pick, seeded } from "./random.ts";

export interface BarSearch {
  readonly pieces: readonly Piece[];
  readonly types: readonly BarType[];
  readonly available: readonly number[];
  readonly unit: number;
  /** Steps, stretch by stretch, each going on from the best of those before. */
  readonly stretches: readonly number[];
  readonly seed: number;
  /** What no filling costs less than; asked once there is a first one, since it can take longer than that. */
  lower(): LowerBound;
}

/** The best filling so far, and what none costs less than as far as is known. */
export interface Found {
  readonly filling: Filling;
  readonly lower: LowerBound;
  readonly iterations: number;
  /** Stretches that have ended. */
  readonly stretch: number;
}

/** Entries of lists that patterns may take for each step of the budget: they then take about as long. */
const ENTRIES_A_STEP = 50_000;

/** Refilling gets few of the steps: what dives have left is seldom mended by it. */
const REFILL_SHARE = 1 / 8;
/** Steps of refilling from one breath to the next. */
const BREATH = 8;

/** Gives what it has now and then, at first as soon as all pieces are in bars once; may be left at any time. */
export function* searchBars(search: BarSearch): Generator<Found, Found> {
  if (search.pieces.length === 0) {
    const none = { filling: { bars: [], left: [] }, lower: search.lower(), iterations: 0, stretch: 0 };
    yield none;
    return none;
  }
  yield { filling: quickPlan(search), lower: UNKNOWN, iterations: 1, stretch: 0 };
  let lower = search.lower();
  const first = firstPlan(search, lower);
  let { iterations } = first;
  let best = downsize(search, first);
  let stretch = 0;
  const found = (): Found => ({ filling: best, lower, iterations, stretch });
  yield found();
  const random = seeded(search.seed);
  for (const budget of search.stretches) {
    let refills = budget;
    if (best.left.length === 0 && !isDone(best, lower)) {
      refills *= REFILL_SHARE;
      const diving = dive(search, {
        goal: costOf(best),
        bound: lower.bound,
        work: budget * ENTRIES_A_STEP,
        bars: [...first.tried, ...best.bars],
      });
      for (let next = diving.next(); ; next = diving.next()) {
        if (next.value.bound > lower.bound + 1e-9) lower = { bound: next.value.bound, how: "pattern-lp" };
        best = next.value.better ?? best;
        if (next.done) {
          iterations += next.value.rounds;
          break;
        }
        yield found();
      }
    }
    const refilling = refill(search, best, { budget: refills, lower, random });
    for (let next = refilling.next(); ; next = refilling.next()) {
      best = next.value.filling;
      if (next.done) {
        iterations += next.value.steps;
        break;
      }
      yield found();
    }
    best = downsize(search, best);
    stretch += 1;
    yield found();
  }
  return found();
}

/** Prices to try: as they are, and leaning to short or to long bars. */
const leanings = [1, 0.9, 1.1];

interface First extends Filling {
  readonly iterations: number;
  /** The bars of all fillings that were tried. */
  readonly tried: readonly FilledBar[];
}

/** Before a bound was worked out. */
const UNKNOWN: LowerBound = { bound: 0, how: "none" };

/** Each piece in the bar that it fits best: what can be told at once. */
function quickPlan(search: BarSearch): Filling {
  return bestFit({ ...search, pieces: longestFirst(search.pieces), price: ({ cost }) => cost });
}

function firstPlan(search: BarSearch, lower: LowerBound): First {
  const pieces = longestFirst(search.pieces);
  const tried: FilledBar[] = [];
  let best: Filling | undefined;
  let iterations = 0;
  for (const leaning of search.types.length > 1 ? leanings : [1]) {
    const price = (type: BarType) => type.cost * longestRun(type) ** (leaning - 1);
    for (const fill of [bestFit, fullestBars]) {
      const filling = fill({ ...search, pieces, price });
      iterations += 1;
      tried.push(...filling.bars);
      if (best === undefined || isBetter(filling, best)) best = filling;
      if (isDone(best, lower)) return { ...best, iterations, tried };
    }
  }
  return { ...(best ?? { bars: [], left: pieces }), iterations, tried };
}

interface Refilled {
  readonly filling: Filling;
  readonly steps: number;
}

function* refill(
  search: BarSearch,
  start: Filling,
  { budget, lower, random }: { budget: number; lower: LowerBound; random: () => number },
): Generator<Refilled, Refilled> {
  let best = start;
  let steps = 0;
  while (steps < budget && !isDone(best, lower) && best.bars.length + best.left.length > 1) {
    if (steps % BREATH === BREATH - 1) yield { filling: best, steps };
    steps += 1;
    const taken = chooseBars(best, random);
    const kept = best.bars.filter((_, index) => !taken.has(index));
    const loose = best.bars.filter((_, index) => taken.has(index)).flatMap(piecesOf);
    const shakes = new Map(search.types.map((type) => [type, 0.9 + 0.2 * random()]));
    const job: FillJob = {
      ...search,
      pieces: shaken([...loose, ...best.left], random),
      available: barsAfter(search.available, kept),
      price: (type) => type.cost * (shakes.get(type) ?? 1),
    };
    const again = random() < 0.3 ? bestFit(job) : fullestBars(job);
    const candidate = { bars: [...kept, ...again.bars], left: again.left };
    if (!isBetter(best, candidate)) best = candidate;
  }
  return { filling: best, steps };
}

/** Two to five bars to empty; the emptiest is among them every other time. */
function chooseBars(plan: Filling, random: () => number): Set<number> {
  const taken = new Set<number>();
  const wanted = Math.min(plan.bars.length, 2 + pick(random, 4));
  if (random() < 0.5) {
    let lowest = 0;
    plan.bars.forEach((bar, index) => {
      const other = plan.bars[lowest];
      if (other !== undefined && fullness(bar) < fullness(other)) lowest = index;
    });
    taken.add(lowest);
  }
  while (taken.size < wanted) taken.add(pick(random, plan.bars.length));
  return taken;
}

function longestFirst(pieces: readonly Piece[]): Piece[] {
  return [...pieces].sort((a, b) => b.length - a.length || a.demand - b.demand);
}

function shaken(pieces: readonly Piece[], random: () => number): Piece[] {
  const keys = new Map(pieces.map((piece) => [piece, piece.length * (0.8 + 0.2 * random())]));
  return [...pieces].sort((a, b) => (keys.get(b) ?? 0) - (keys.get(a) ?? 0) || a.demand - b.demand);
}

function downsize(search: BarSearch, plan: Filling): Filling {
  let bars = [...plan.bars];
  for (const bar of [...bars].sort((a, b) => b.type.cost - a.type.cost)) {
    const others = bars.filter((other) => other !== bar);
    const available = barsAfter(search.available, others);
    const moved = search.types
      .filter((type) => type.cost < bar.type.cost && (available[type.stock] ?? 0) > 0)
      .sort((a, b) => a.cost - b.cost || a.stock - b.stock)
      .map((type) => onOneBar(piecesOf(bar), type, search))
      .find((one) => one !== undefined);
    if (moved !== undefined) bars = [...others, moved];
  }
  return { bars, left: plan.left };
}

function onOneBar(pieces: readonly Piece[], type: BarType, search: BarSearch): FilledBar | undefined {
  const available = search.available.map((_, stock) => (stock === type.stock ? 1 : 0));
  const job = { ...search, pieces: longestFirst(pieces), types: [type], available, price: () => 1 };
  for (const fill of [bestFit, fullestBars]) {
    const filling = fill(job);
    if (filling.left.length === 0) return filling.bars[0];
  }
  return undefined;
}

function barsAfter(available: readonly number[], bars: readonly FilledBar[]): number[] {
  const left = [...available];
  for (const bar of bars) left[bar.type.stock] = (left[bar.type.stock] ?? 0) - 1;
  return left;
}

function isDone(plan: Filling, { bound }: LowerBound): boolean {
  return plan.left.length === 0 && costOf(plan) <= bound + 1e-6;
}

/** Less left out, then cheaper, then fuller bars beside emptier ones, which frees a bar in the end. */
function isBetter(a: Filling, b: Filling): boolean {
  const left = lengthOf(a.left) - lengthOf(b.left);
  if (left !== 0) return left < 0;
  const cost = costOf(a) - costOf(b);
  if (Math.abs(cost) > 1e-6) return cost < 0;
  return concentration(a) > concentration(b) + 1e-9;
}

function costOf(plan: Filling): number {
  return plan.bars.reduce((sum, bar) => sum + bar.type.cost, 0);
}

function concentration(plan: Filling): number {
  return plan.bars.reduce((sum, bar) => sum + fullness(bar) ** 2, 0);
}

function fullness(bar: FilledBar): number {
  return lengthOf(piecesOf(bar)) / Math.max(1, lengthOfRuns(bar.type));
}

function piecesOf(bar: FilledBar): Piece[] {
  return bar.pieces.flat();
}

function lengthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.length, 0);
}

function lengthOfRuns(type: BarType): number {
  return type.runs.reduce((sum, run) => sum + run, 0);
}

function longestRun(type: BarType): number {
  return Math.max(1, ...type.runs);
}
