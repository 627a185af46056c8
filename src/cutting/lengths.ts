import { fromGridSteps, toGridSteps } from "../units/length.ts";
import type { BarType, FilledBar, Piece } from "./bar-fill.ts";
import type { Found } from "./bar-search.ts";
import { searchBars } from "./bar-search.ts";
import { boundLengths, compare, sumOf } from "./bounds.ts";
import { barCost, lengthPlanCost } from "./cost.ts";
import { commonDivisor } from "./divisor.ts";
import { begun, ended, inTurn, takeTo } from "./in-turn.ts";
import type {
  CutBar,
  CutResult,
  LengthDemand,
  LengthPlan,
  LengthRequest,
  LengthStock,
  Span,
  Unplaced,
  UnplacedReason,
} from "./model.ts";
import { usableRuns } from "./runs.ts";
import { stretches } from "./stretches.ts";

const usualRest = 300;
const usualBudget = 200;

/**
 * A plan for cutting the demands from bars of their section, each piece in one sound run, its cost, and a bound on
 * what any such plan can cost. Never throws: a piece that can't be had is listed with why. Same request, same plan.
 */
export function cutLengths(request: LengthRequest): CutResult<LengthPlan> {
  return ended(lengthPlans(request));
}

/**
 * The same, giving the best plan so far every few milliseconds, the first as soon as there is one: the same object until the plan
 * is better or the bound is higher. Who has seen enough stops asking. The last is what `cutLengths` returns.
 */
export function* lengthPlans(
  request: LengthRequest,
): Generator<CutResult<LengthPlan>, CutResult<LengthPlan>> {
  const seed = request.seed ?? 1;
  const parts = partsOf(request);
  return yield* inTurn(parts, {
    isOther: (found, before) => found.filling !== before.filling || found.lower !== before.lower,
    resultOf: () => resultOf(request, parts, seed),
  });
}

/**
 * What `cutLengths` returns at each effort, going on from the effort before rather than from nothing.
 *
 * @param most the last effort that will be asked for: each is asked for in its turn, rising, and is this one halved and halved again
 */
export function lengthsGoingOn(
  request: LengthRequest,
  most: number,
): (effort: number) => CutResult<LengthPlan> {
  const parts = partsOf({ ...request, effort: most });
  return (effort) => {
    takeTo(parts, stretches(request.budget ?? usualBudget, effort).length);
    return resultOf(request, parts, request.seed ?? 1);
  };
}

function partsOf(request: LengthRequest) {
  const sections = new Set(request.demands.map((demand) => demand.section));
  return [...sections].map((section) => {
    const job = jobOf(request, section);
    return { job, ...begun(searchOf(request, job, request.seed ?? 1)) };
  });
}

type Job = ReturnType<typeof jobOf>;

/** The pieces of one section, the bars that they may be cut from, and what can never be had. */
function jobOf(request: LengthRequest, section: string) {
  const kerf = toGridSteps(request.kerf);
  const kinds = new Map<string, { number: number; demand: LengthDemand }>();
  const pieces: Piece[] = [];
  const never: Unplaced[] = [];
  request.demands.forEach((demand, index) => {
    if (demand.section !== section) return;
    const reason = whyNever(demand, request);
    if (reason !== undefined) {
      never.push({ demandId: demand.id, reason });
      return;
    }
    const key = JSON.stringify([demand.minWidth, demand.minThickness, demand.lots]);
    const kind = kinds.get(key) ?? { number: kinds.size, demand };
    kinds.set(key, kind);
    pieces.push({ demand: index, length: toGridSteps(demand.length) + kerf, kind: kind.number });
  });
  return { pieces, types: barTypes(request, section, [...kinds.values()]), never };
}

function searchOf(request: LengthRequest, { pieces, types }: Job, seed: number): Generator<Found, Found> {
  return searchBars({
    pieces,
    types,
    available: request.stock.map((stock) => stock.count ?? Number.POSITIVE_INFINITY),
    unit: commonDivisor([...pieces.map((piece) => piece.length), ...types.flatMap((type) => type.runs)]),
    stretches: stretches(request.budget ?? usualBudget, request.effort),
    seed,
    lower: () => boundLengths(request, new Set(pieces.map((piece) => piece.demand))),
  });
}

function resultOf(
  request: LengthRequest,
  parts: readonly { readonly job: Job; readonly now: Found }[],
  seed: number,
): CutResult<LengthPlan> {
  const lower = sumOf(
    parts.map(({ job, now }) => {
      // What is left out takes no stock, so the bound is that of the pieces placed.
      const left = new Set(now.filling.left);
      const placed = job.pieces.filter((piece) => !left.has(piece)).map(({ demand }) => demand);
      return left.size === 0 ? now.lower : boundLengths(request, new Set(placed));
    }),
  );
  const unplaced = parts.flatMap(({ job, now }) => [
    ...job.never,
    ...now.filling.left.map(({ demand }) => ({
      demandId: request.demands[demand]?.id ?? "",
      reason: "stock-used-up" as const,
    })),
  ]);
  const bars = parts.flatMap(({ now }) => now.filling.bars);
  const plan = { bars: drawBars(bars, request), unplaced };
  const cost = lengthPlanCost(plan, request.stock);
  const bound = compare({ unplaced, cost }, lower);
  return { plan, cost, bound, iterations: parts.reduce((sum, { now }) => sum + now.iterations, 0), seed };
}

function barTypes(
  request: LengthRequest,
  section: string,
  kinds: readonly { number: number; demand: LengthDemand }[],
): BarType[] {
  const kerf = toGridSteps(request.kerf);
  // Bars that serve the same pieces share one set, by which the fill knows them.
  const sets = new Map<string, Set<number>>();
  return request.stock.flatMap((stock, index) => {
    if (stock.section !== section) return [];
    const numbers = kinds.filter((kind) => suits(kind.demand, stock)).map((kind) => kind.number);
    const key = numbers.join(" ");
    const serves = sets.get(key) ?? new Set(numbers);
    sets.set(key, serves);
    const runs = usableRuns(stock, request).map((run) => run.to - run.from + kerf);
    return [{ stock: index, cost: barCost(stock), runs, serves }];
  });
}

function suits(demand: LengthDemand, stock: LengthStock): boolean {
  if (demand.minWidth !== undefined && toGridSteps(stock.width ?? 0) < toGridSteps(demand.minWidth))
    return false;
  if (
    demand.minThickness !== undefined &&
    toGridSteps(stock.thickness ?? 0) < toGridSteps(demand.minThickness)
  ) {
    return false;
  }
  return demand.lots === undefined || (stock.lot !== undefined && demand.lots.includes(stock.lot));
}

/** Why no bar of the request can ever give the piece; undefined where one can. */
export function whyNever(demand: LengthDemand, request: LengthRequest): UnplacedReason | undefined {
  const ofSection = request.stock.filter((stock) => stock.section === demand.section);
  if (ofSection.length === 0) return "no-stock";
  const suitable = ofSection.filter((stock) => suits(demand, stock));
  if (suitable.length === 0) return "no-match";
  const length = toGridSteps(demand.length);
  const long = suitable.filter((stock) =>
    usableRuns(stock, request).some((run) => run.to - run.from >= length),
  );
  if (long.length === 0) return "too-large";
  return long.some((stock) => (stock.count ?? 1) > 0) ? undefined : "stock-used-up";
}

/** Bars of one stock after another, in an order that sets the stop less often: alike together, and what can be cut as it is set next. */
function drawBars(filled: readonly FilledBar[], request: LengthRequest): CutBar[] {
  const drawn: CutBar[] = [];
  let stop: number | undefined;
  for (const [index, stock] of request.stock.entries()) {
    const runs = usableRuns(stock, request);
    const left = lotsOf(filled.filter(({ type }) => type.stock === index));
    const from = drawn.length;
    while (left.length > 0) {
      const at = Math.max(
        0,
        left.findIndex(([one]) => one?.pieces[0]?.some(({ length }) => length === stop)),
      );
      const [lot = []] = left.splice(at, 1);
      const first = stop;
      for (const bar of lot) {
        const laid = layOut(bar, runs, request, first);
        drawn.push({ stockId: stock.id, index: drawn.length - from, ...laid });
        const last = laid.pieces.at(-1);
        if (last) stop = toGridSteps(last.to - last.from) + toGridSteps(request.kerf);
      }
    }
  }
  return drawn;
}

/** Bars that are cut alike, in the order in which the first of each comes. */
function lotsOf(bars: readonly FilledBar[]): FilledBar[][] {
  const lots = new Map<string, FilledBar[]>();
  for (const bar of bars) {
    const name = JSON.stringify(
      bar.pieces.map((run) => run.map(({ length }) => length).sort((a, b) => a - b)),
    );
    const lot = lots.get(name);
    if (lot) lot.push(bar);
    else lots.set(name, [bar]);
  }
  return [...lots.values()];
}

/**
 * Pieces of each run from its start, longest first; what is left behind the last cut, if long enough, is a rest.
 *
 * @param stop the length, grown by the kerf, that comes before all others: the saw's stop is set to it
 */
export function layOut(
  bar: Pick<FilledBar, "pieces">,
  runs: readonly Span[],
  request: LengthRequest,
  stop?: number,
): Pick<CutBar, "pieces" | "rests"> {
  const kerf = toGridSteps(request.kerf);
  const pieces: { demandId: string; from: number; to: number }[] = [];
  const rests: Span[] = [];
  runs.forEach((run, index) => {
    let at = run.from;
    const ordered = [...(bar.pieces[index] ?? [])].sort(
      (a, b) =>
        Number(b.length === stop) - Number(a.length === stop) || b.length - a.length || a.demand - b.demand,
    );
    for (const piece of ordered) {
      const to = at + piece.length - kerf;
      pieces.push({
        demandId: request.demands[piece.demand]?.id ?? "",
        from: fromGridSteps(at),
        to: fromGridSteps(to),
      });
      at = to + kerf;
    }
    const rest = fromGridSteps(run.to - at);
    if (rest > 0 && rest >= (request.keepRestFrom ?? usualRest))
      rests.push({ from: fromGridSteps(at), to: fromGridSteps(run.to) });
  });
  return { pieces, rests };
}
