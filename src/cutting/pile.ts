import { toGridSteps } from "../units/length.ts";
import { compare } from "./bounds.ts";
import type { LowerBound } from "./box-bound.ts";
import { lengthPlanCost, tidySum } from "./cost.ts";
import { begun, ended, takeTo } from "./in-turn.ts";
import { layOut, whyNever } from "./lengths.ts";
import type {
  CutBar,
  CutResult,
  LengthDemand,
  LengthPlan,
  LengthRequest,
  LengthStock,
  PileBoard,
  RipPlan,
  RipRequest,
} from "./model.ts";
import { leastBoards, leastLeftOut } from "./pile-bound.ts";
import type { CutStrip } from "./pile-dive.ts";
import { NO_GROUP, type PileCutting, type PileJob, type SearchBoard, searchPile } from "./pile-search.ts";
import { ripPlanOf, soundRuns, straightWidth, stripStock, suits } from "./rips.ts";
import { usableRuns } from "./runs.ts";
import { stretches } from "./stretches.ts";

const usualBudget = 300;

/** Sums that each of the first cutting and the two bounds may take for a step of the budget: they then take no longer than it. */
const SUMS_A_STEP = 3e5;

/** The pieces wanted of one strip width. */
export interface PilePieces {
  readonly section: string;
  readonly width: number;
  readonly minThickness?: number;
  readonly lots?: readonly string[];
  readonly pieces: readonly {
    readonly id: string;
    readonly length: number;
    /** Pieces that are seen together, as on one face, come from as few lots and looks as the pile allows; absent: it may come from anywhere. */
    readonly group?: string;
  }[];
}

export interface PileRequest {
  readonly boards: readonly PileBoard[];
  readonly wanted: readonly PilePieces[];
  readonly kerf: number;
  readonly straighten?: number;
  readonly endTrim?: number;
  readonly defectMargin?: number;
  readonly keepRestFrom?: number;
  readonly budget?: number;
  /** Times the budget, as of sheets. */
  readonly effort?: number;
  readonly seed?: number;
}

export interface PileResult {
  /** The request that the rip plan answers, to check it against. */
  readonly ripRequest: RipRequest;
  readonly rips: RipPlan;
  /** The strips, as the stock that the lengths are cut from. */
  readonly strips: readonly LengthStock[];
  readonly demands: readonly LengthDemand[];
  /** Costs are areas of whole boards that are ripped, m²; the bound is that of cutting the same pieces from whatever boards. */
  readonly lengths: CutResult<LengthPlan>;
  /** Area of the pieces left out, and the least that any plan leaves out, m². */
  readonly leftOut: { readonly area: number; readonly least: number };
}

/** From the pile to the pieces: boards ripped and strips cut in one search, for the least of pieces left out and then the least of boards. */
export function cutPile(request: PileRequest): PileResult {
  return ended(pilePlans(request));
}

/**
 * The same, giving the best plan so far every few milliseconds, as of sheets. Bounds come with the second: they take longer than the
 * first. That on the boards is of the pieces that are placed, so a plan on the way that leaves out others is without it.
 */
export function* pilePlans(request: PileRequest): Generator<PileResult, PileResult> {
  const job = jobOf(request);
  const proof = proofOf(job);
  const search = searchPile(job);
  let { value: found } = search.next();
  let result = resultOf(request, job, found, NO_PROOF);
  yield result;
  for (let next = search.next(), at = 1; ; next = search.next(), at++) {
    const isOther = at === 1 || next.value.left !== found.left || next.value.stretch > found.stretch;
    found = next.value;
    if (next.done) return resultOf(request, job, found, proof);
    if (isOther) result = resultOf(request, job, found, at === 1 ? proof : proof.known());
    yield result;
  }
}

/** What `cutPile` returns at each effort, going on from the effort before; `most` as for lengths. */
export function pileGoingOn(request: PileRequest, most: number): (effort: number) => PileResult {
  const job = jobOf({ ...request, effort: most });
  const proof = proofOf(job);
  const part = begun(searchPile(job));
  return (effort) => {
    takeTo([part], stretches(request.budget ?? usualBudget, effort).length);
    return resultOf(request, job, part.now, proof);
  };
}

/** What no cutting of the pile can better: areas of pieces left out and of boards, m². */
interface PileProof {
  readonly leastLeftOut: () => number;
  readonly leastBoards: (placed: ReadonlySet<number>) => LowerBound;
}

const NOTHING: LowerBound = { bound: 0, how: "none" };
const NO_PROOF: PileProof = { leastLeftOut: () => 0, leastBoards: () => NOTHING };

/** Reckoned when it is first asked for; `known` is without what was not. */
function proofOf(job: PileJob): PileProof & { readonly known: () => PileProof } {
  let leftOut: number | undefined;
  const boards = new Map<string, LowerBound>();
  const keyOf = (placed: ReadonlySet<number>): string => [...placed].join(" ");
  return {
    leastLeftOut: () => {
      leftOut ??= leastLeftOut(job, job.work);
      return leftOut;
    },
    leastBoards: (placed) => {
      const key = keyOf(placed);
      const lower = boards.get(key) ?? { bound: leastBoards(job, job.work, placed), how: "pattern-lp" };
      boards.set(key, lower);
      return lower;
    },
    known: () => ({
      leastLeftOut: () => leftOut ?? 0,
      leastBoards: (placed) => boards.get(keyOf(placed)) ?? NOTHING,
    }),
  };
}

function jobOf(request: PileRequest): PileJob {
  const { boards, wanted } = request;
  const grow = toGridSteps(request.kerf);
  const groups = new Map<string, number>();
  const looks = [...new Set(boards.map(lookOf))];
  const numberOf = (group: string | undefined): number => {
    if (group === undefined) return NO_GROUP;
    const number = groups.get(group) ?? groups.size;
    groups.set(group, number);
    return number;
  };
  return {
    boards: boards.map((board): SearchBoard => {
      const { from, to } = straightWidth(board, request);
      const whole = { id: board.id, section: "", length: board.length, sound: soundRuns(board) };
      const along = { ...cutOptions(request), stock: [], demands: [] };
      return {
        room: toGridSteps(to) - toGridSteps(from) + grow,
        runs: usableRuns(whole, along).map((run) => run.to - run.from + grow),
        area: areaOf(board.length, board.width),
        suits: wanted.map((want) => suits(board, want)),
        look: looks.indexOf(lookOf(board)),
      };
    }),
    widths: wanted.map(({ width }) => toGridSteps(width) + grow),
    pieces: wanted.flatMap((want, width) =>
      want.pieces.map(({ length, group }) => ({
        width,
        length: toGridSteps(length) + grow,
        area: areaOf(length, want.width),
        group: numberOf(group),
      })),
    ),
    stretches: stretches(request.budget ?? usualBudget, request.effort),
    work: (request.budget ?? usualBudget) * SUMS_A_STEP,
    seed: request.seed ?? 1,
  };
}

function resultOf(request: PileRequest, job: PileJob, found: PileCutting, proof: PileProof): PileResult {
  const { boards, wanted } = request;
  const ripRequest = ripRequestOf(request);
  const demands = wanted.flatMap((want) => want.pieces.map((piece) => demandOf(want, piece)));
  const ripped = boards.flatMap((board, at) => {
    const strips = found.boards[at];
    // As they come to lie across the board, so that strips and their pieces are named alike.
    return strips
      ? [{ board, strips: [...strips].sort((a, b) => widthOf(wanted, b) - widthOf(wanted, a)) }]
      : [];
  });
  const rips = ripPlanOf(
    ripped.map(({ board, strips }) => ({ board, strips: strips.map(({ width }) => width) })),
    ripRequest,
  );
  const strips = stripStock(rips, ripRequest);
  const full = { ...cutOptions(request), demands, stock: strips };
  const bars = ripped.flatMap((one) => one.strips).map((strip, at) => barOf(strip, strips[at], full));
  const out = new Set(found.left);
  const unplaced = found.left.flatMap((at) => {
    const demand = demands[at];
    return demand
      ? [{ demandId: demand.id, reason: whyNever(demand, full) ?? ("stock-used-up" as const) }]
      : [];
  });
  const plan = { bars, unplaced };
  const cost = lengthPlanCost(plan, strips);
  const area = tidySum(found.left.map((at) => job.pieces[at]?.area ?? 0));
  const least = area > 0 ? Math.min(area, tidySum([proof.leastLeftOut()])) : 0;
  const placed = new Set(demands.flatMap((_, at) => (out.has(at) ? [] : [at])));
  const bound = compare({ unplaced: [], cost }, proof.leastBoards(placed));
  return {
    ripRequest,
    rips,
    strips,
    demands,
    lengths: {
      plan,
      cost,
      bound: { ...bound, proven: bound.proven && area <= least },
      iterations: found.iterations,
      seed: job.seed,
    },
    leftOut: { area, least },
  };
}

/** In m². */
function areaOf(length: number, width: number): number {
  return (length * width) / 1e6;
}

/** One name for a lot and what boards of it look like. */
function lookOf({ lot, look = "" }: PileBoard): string {
  return JSON.stringify([lot, look]);
}

function widthOf(wanted: readonly PilePieces[], { width }: CutStrip): number {
  return wanted[width]?.width ?? 0;
}

function ripRequestOf({ boards, wanted, kerf, straighten }: PileRequest): RipRequest {
  return {
    boards,
    kerf,
    ...(straighten === undefined ? {} : { straighten }),
    widths: wanted.map(({ section, width, minThickness, lots, pieces }) => ({
      section,
      width,
      ...(minThickness === undefined ? {} : { minThickness }),
      ...(lots === undefined ? {} : { lots }),
      totalLength: pieces.reduce((sum, { length }) => sum + length + kerf, 0),
      shortest: pieces.reduce((least, { length }) => Math.min(least, length), Number.POSITIVE_INFINITY),
    })),
  };
}

function cutOptions({ kerf, endTrim, defectMargin, keepRestFrom }: PileRequest) {
  return {
    kerf,
    ...(endTrim === undefined ? {} : { endTrim }),
    ...(defectMargin === undefined ? {} : { defectMargin }),
    ...(keepRestFrom === undefined ? {} : { keepRestFrom }),
  };
}

function demandOf(want: PilePieces, piece: PilePieces["pieces"][number]): LengthDemand {
  return {
    id: piece.id,
    length: piece.length,
    section: want.section,
    minWidth: want.width,
    ...(want.minThickness === undefined ? {} : { minThickness: want.minThickness }),
    ...(want.lots === undefined ? {} : { lots: want.lots }),
  };
}

function barOf({ pieces }: CutStrip, stock: LengthStock | undefined, request: LengthRequest): CutBar {
  const kerf = toGridSteps(request.kerf);
  const lengthOf = (demand: number): number => toGridSteps(request.demands[demand]?.length ?? 0) + kerf;
  const placed = pieces.map((run) => run.map((demand) => ({ demand, length: lengthOf(demand), kind: 0 })));
  const runs = stock === undefined ? [] : usableRuns(stock, request);
  return { stockId: stock?.id ?? "", index: 0, ...layOut({ pieces: placed }, runs, request) };
}
