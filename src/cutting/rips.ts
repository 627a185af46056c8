import { fromGridSteps, toGridSteps } from "../units/length.ts";
import type {
  LengthStock,
  PileBoard,
  RipDemand,
  RipPlan,
  RippedBoard,
  RipRequest,
  RipSupply,
  Span,
} from "./model.ts";

const usualStraightening = 2.5;

/** A board and the strips that it is ripped into, each by the place of its width in the request. */
export interface Rip {
  readonly board: PileBoard;
  readonly strips: readonly number[];
}

/** The strips in their places across the boards, and what they give of each width. Strips run with the grain and keep their board's lot and sound runs. */
export function ripPlanOf(rips: readonly Rip[], request: RipRequest): RipPlan {
  return {
    boards: rips.map((rip) => strips(rip, request)),
    supply: request.widths.map((width, index) => supplyOf(width, index, rips)),
  };
}

/** The board across which strips may lie, mm from its left edge: less wane, less straightening. */
export function straightWidth(board: PileBoard, request: Pick<RipRequest, "straighten">): Span {
  const straighten = request.straighten ?? usualStraightening;
  const wane = (edge: "left" | "right") => (board.wane?.edge === edge ? board.wane.width : 0);
  return { from: wane("left") + straighten, to: board.width - wane("right") - straighten };
}

/** What is left of a board between its defects, mm. */
export function soundRuns(board: PileBoard): Span[] {
  const runs: Span[] = [];
  let from = 0;
  for (const defect of [...board.defects].sort((a, b) => a.from - b.from)) {
    const to = Math.min(defect.from, board.length);
    if (to > from) runs.push({ from, to });
    from = Math.max(from, defect.to);
  }
  if (from < board.length) runs.push({ from, to: board.length });
  return runs;
}

/** May strips of a width be ripped from the board? */
export function suits(board: PileBoard, width: Pick<RipDemand, "width" | "minThickness" | "lots">): boolean {
  if (width.width <= 0 || toGridSteps(board.thickness) < toGridSteps(width.minThickness ?? 0)) return false;
  return width.lots === undefined || width.lots.includes(board.lot);
}

/** The strips of one board, widest first from its left edge, a blade apart. */
function strips({ board, strips: places }: Rip, request: RipRequest): RippedBoard {
  const kerf = toGridSteps(request.kerf);
  let at = toGridSteps(straightWidth(board, request).from);
  const wide = places.flatMap((place) => request.widths[place] ?? []).sort((a, b) => b.width - a.width);
  const list = wide.map((width, index) => {
    const across = { from: fromGridSteps(at), to: fromGridSteps(at + toGridSteps(width.width)) };
    at += toGridSteps(width.width) + kerf;
    return { id: `${board.id}/${index + 1}`, section: width.section, across };
  });
  return { boardId: board.id, strips: list };
}

function supplyOf(width: RipDemand, index: number, rips: readonly Rip[]): RipSupply {
  const lots = new Map<string, number>();
  for (const { board, strips } of rips) {
    const count = strips.filter((place) => place === index).length;
    const given = count * usefulLength(board, width.shortest ?? 0);
    if (given > 0) lots.set(board.lot, (lots.get(board.lot) ?? 0) + given);
  }
  const byLot = [...lots].map(([lot, had]) => ({ lot, had })).sort((a, b) => (a.lot < b.lot ? -1 : 1));
  const had = byLot.reduce((sum, one) => sum + one.had, 0);
  return {
    section: width.section,
    wanted: width.totalLength,
    had,
    short: Math.max(0, width.totalLength - had),
    byLot,
  };
}

/** Length of the board's sound runs of at least so much, mm. */
export function usefulLength(board: PileBoard, shortest: number): number {
  return soundRuns(board)
    .map((run) => run.to - run.from)
    .filter((run) => run >= shortest)
    .reduce((sum, run) => sum + run, 0);
}

/** The strips of a rip plan as stock for cutting to length. Strips of a board cost its whole area, each a share by its width. */
export function stripStock(plan: RipPlan, request: RipRequest): LengthStock[] {
  const boards = new Map(request.boards.map((board) => [board.id, board]));
  return plan.boards.flatMap((ripped) => {
    const board = boards.get(ripped.boardId);
    if (board === undefined) return [];
    const wide = ripped.strips.reduce((sum, { across }) => sum + across.to - across.from, 0);
    return ripped.strips.map((strip) => ({
      id: strip.id,
      length: board.length,
      cost: (board.length * board.width * (strip.across.to - strip.across.from)) / wide / 1e6,
      count: 1,
      section: strip.section,
      board: board.id,
      lot: board.lot,
      width: fromGridSteps(toGridSteps(strip.across.to) - toGridSteps(strip.across.from)),
      thickness: board.thickness,
      sound: soundRuns(board),
    }));
  });
}
