import { toGridSteps } from "../units/length.ts";
import { boundLengths, compare } from "./bounds.ts";
import { lengthPlanCost } from "./cost.ts";
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
import { type CutStrip, type PileCutting, type SearchBoard, searchPile } from "./pile-search.ts";
import { ripPlanOf, soundRuns, straightWidth, stripStock, suits } from "./rips.ts";
import { usableRuns } from "./runs.ts";

const usualBudget = 300;

/** The pieces wanted of one strip width. */
export interface PilePieces {
  readonly section: string;
  readonly width: number;
  readonly minThickness?: number;
  readonly lots?: readonly string[];
  readonly pieces: readonly {
    readonly id: string;
    readonly length: number;
    /** Pieces that are seen together, as on one face, come from as few lots and looks as the pile allows; absent: "". */
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
  readonly seed?: number;
}

export interface PileResult {
  /** The request that the rip plan answers, to check it against. */
  readonly ripRequest: RipRequest;
  readonly rips: RipPlan;
  /** The strips, as the stock that the lengths are cut from. */
  readonly strips: readonly LengthStock[];
  readonly demands: readonly LengthDemand[];
  readonly lengths: CutResult<LengthPlan>;
}

/** From the pile to the pieces: boards ripped and strips cut in one search, for the least of pieces left out and then the least of boards. */
export function cutPile(request: PileRequest): PileResult {
  const { boards, wanted, kerf } = request;
  const ripRequest = ripRequestOf(request);
  const pieces = wanted.flatMap((want, width) =>
    want.pieces.map((piece) => ({ demand: demandOf(want, piece), width, group: piece.group ?? "" })),
  );
  const groups = [...new Set(pieces.map(({ group }) => group))];
  const looks = [...new Set(boards.map(lookOf))];
  const demands = pieces.map(({ demand }) => demand);
  const grow = toGridSteps(kerf);
  const lengthRequest = { ...cutOptions(request), stock: [], demands };
  const found = searchPile({
    boards: boards.map((board): SearchBoard => {
      const { from, to } = straightWidth(board, request);
      const whole = { id: board.id, section: "", length: board.length, sound: soundRuns(board) };
      return {
        room: toGridSteps(to) - toGridSteps(from) + grow,
        runs: usableRuns(whole, lengthRequest).map((run) => run.to - run.from + grow),
        area: toGridSteps(board.length) * toGridSteps(board.width),
        suits: wanted.map((want) => suits(board, want)),
        look: looks.indexOf(lookOf(board)),
      };
    }),
    widths: wanted.map(({ width }) => toGridSteps(width) + grow),
    pieces: pieces.map(({ demand, width, group }) => ({
      width,
      length: toGridSteps(demand.length) + grow,
      group: groups.indexOf(group),
    })),
    budget: request.budget ?? usualBudget,
    seed: request.seed ?? 1,
  });
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
  const full = { ...lengthRequest, stock: strips };
  const bars = ripped.flatMap((one) => one.strips).map((strip, at) => barOf(strip, strips[at], full));
  return { ripRequest, rips, strips, demands, lengths: resultOf(full, bars, found) };
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

/** The bound is that of cutting the same pieces from the strips as they are ripped. */
function resultOf(
  request: LengthRequest,
  bars: readonly CutBar[],
  { left, iterations, seed }: PileCutting,
): CutResult<LengthPlan> {
  const out = new Set(left);
  const unplaced = left.flatMap((at) => {
    const demand = request.demands[at];
    return demand
      ? [{ demandId: demand.id, reason: whyNever(demand, request) ?? ("stock-used-up" as const) }]
      : [];
  });
  const plan = { bars, unplaced };
  const cost = lengthPlanCost(plan, request.stock);
  const placed = new Set(request.demands.flatMap((_, at) => (out.has(at) ? [] : [at])));
  return { plan, cost, bound: compare({ unplaced, cost }, boundLengths(request, placed)), iterations, seed };
}
