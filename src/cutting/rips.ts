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
/** Rounds of second thoughts after the first choice; each round looks at every board once. */
const mostRounds = 8;
/** More ways than this are not looked at for one board: no board of a pile comes near it with widths fit for cladding. */
const mostWays = 4000;

/** How many strips of each width, by the width's place in the request. */
type Combination = readonly number[];

interface Candidate {
  readonly board: PileBoard;
  readonly ways: readonly Combination[];
  /** Sound length that one strip of each width gives, mm. */
  readonly gives: readonly number[];
}

/**
 * Which boards of the pile to rip into which strips, so that each width's total length is met with little waste:
 * each board first takes the combination that lessens what is still short the most, then boards change their minds
 * while that helps, and boards that are not needed stay whole. Strips run with the grain and keep their board's lot
 * and sound runs.
 */
export function ripBoards(request: RipRequest): RipPlan {
  const candidates = request.boards.map((board) => candidateOf(board, request));
  const chosen: Combination[] = candidates.map(() => request.widths.map(() => 0));
  const had = request.widths.map(() => 0);
  const total = request.widths.reduce((sum, width) => sum + width.totalLength, 0);
  let open = shortArea(request.widths, had);
  for (let round = 0; round < mostRounds; round++) {
    let moved = false;
    candidates.forEach((candidate, index) => {
      const best = bestWay(candidate, chosen[index] ?? [], had, request.widths, total);
      if (best === undefined) return;
      apply(had, candidate, chosen[index] ?? [], -1);
      apply(had, candidate, best, 1);
      chosen[index] = best;
      moved = true;
    });
    const now = shortArea(request.widths, had);
    if (!moved && now >= open) break;
    open = now;
  }
  return {
    boards: candidates.flatMap((candidate, index) => strips(candidate.board, chosen[index] ?? [], request)),
    supply: request.widths.map((width, index) => supplyOf(width, index, candidates, chosen)),
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

function candidateOf(board: PileBoard, request: RipRequest): Candidate {
  const span = straightWidth(board, request);
  const room = toGridSteps(span.to) - toGridSteps(span.from) + toGridSteps(request.kerf);
  const runs = soundRuns(board).map((run) => run.to - run.from);
  const gives = request.widths.map((width) =>
    suits(board, width) ? runs.filter((run) => run >= (width.shortest ?? 0)).reduce((a, b) => a + b, 0) : 0,
  );
  const steps = request.widths.map((width, index) =>
    (gives[index] ?? 0) > 0 ? toGridSteps(width.width) + toGridSteps(request.kerf) : Number.POSITIVE_INFINITY,
  );
  return { board, gives, ways: combinations(room, steps) };
}

function suits(board: PileBoard, width: RipDemand): boolean {
  if (width.width <= 0 || toGridSteps(board.thickness) < toGridSteps(width.minThickness ?? 0)) return false;
  return width.lots === undefined || width.lots.includes(board.lot);
}

/** Every way of filling the room with widths, the empty one included. */
function combinations(room: number, steps: readonly number[]): Combination[] {
  const [step, ...others] = steps;
  if (step === undefined) return [[]];
  const found: Combination[] = [];
  for (let count = 0; count === 0 || count * step <= room; count++) {
    for (const rest of combinations(room - (count === 0 ? 0 : count * step), others))
      found.push([count, ...rest]);
    if (found.length >= mostWays) break;
  }
  return found;
}

function apply(had: number[], candidate: Candidate, way: Combination, sign: 1 | -1): void {
  way.forEach((count, index) => {
    had[index] = (had[index] ?? 0) + sign * count * (candidate.gives[index] ?? 0);
  });
}

/** Area still short, mm². */
function shortArea(widths: readonly RipDemand[], had: readonly number[]): number {
  return widths.reduce(
    (sum, width, index) => sum + width.width * Math.max(0, width.totalLength - (had[index] ?? 0)),
    0,
  );
}

/**
 * A better way for one board than its present one, the others staying as they are: less left short; then no rip at
 * all where it isn't needed; then more of the board used, by what each width is short in proportion.
 */
function bestWay(
  candidate: Candidate,
  present: Combination,
  had: readonly number[],
  widths: readonly RipDemand[],
  total: number,
): Combination | undefined {
  const without = [...had];
  apply(without, candidate, present, -1);
  const rate = (way: Combination) => {
    const then = [...without];
    apply(then, candidate, way, 1);
    const strips = way.reduce((sum, count) => sum + count, 0);
    const share = way.reduce(
      (sum, count, index) =>
        sum + (count * (widths[index]?.width ?? 0) * (widths[index]?.totalLength ?? 0)) / total,
      0,
    );
    return { short: shortArea(widths, then), ripped: strips > 0 ? 1 : 0, share };
  };
  let best = present;
  let bestRate = rate(present);
  for (const way of candidate.ways) {
    const one = rate(way);
    const order = bestRate.short - one.short || bestRate.ripped - one.ripped || one.share - bestRate.share;
    if (order > 1e-6) {
      best = way;
      bestRate = one;
    }
  }
  return best === present ? undefined : best;
}

/** The strips of one board, widest first from its left edge, a blade apart. */
function strips(board: PileBoard, way: Combination, request: RipRequest): RippedBoard[] {
  const kerf = toGridSteps(request.kerf);
  let at = toGridSteps(straightWidth(board, request).from);
  const wide = way
    .flatMap((count, index) => Array.from({ length: count }, () => request.widths[index]))
    .filter((width) => width !== undefined)
    .sort((a, b) => b.width - a.width);
  if (wide.length === 0) return [];
  const list = wide.map((width, index) => {
    const across = { from: fromGridSteps(at), to: fromGridSteps(at + toGridSteps(width.width)) };
    at += toGridSteps(width.width) + kerf;
    return { id: `${board.id}/${index + 1}`, section: width.section, across };
  });
  return [{ boardId: board.id, strips: list }];
}

function supplyOf(
  width: RipDemand,
  index: number,
  candidates: readonly Candidate[],
  chosen: readonly Combination[],
): RipSupply {
  const lots = new Map<string, number>();
  candidates.forEach((candidate, board) => {
    const given = (chosen[board]?.[index] ?? 0) * (candidate.gives[index] ?? 0);
    if (given > 0) lots.set(candidate.board.lot, (lots.get(candidate.board.lot) ?? 0) + given);
  });
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

/** The strips of a rip plan as stock for cutting to length; what a strip costs is its share of the board's area. */
export function stripStock(plan: RipPlan, request: RipRequest): LengthStock[] {
  const boards = new Map(request.boards.map((board) => [board.id, board]));
  return plan.boards.flatMap((ripped) => {
    const board = boards.get(ripped.boardId);
    if (board === undefined) return [];
    return ripped.strips.map((strip) => ({
      id: strip.id,
      length: board.length,
      cost: (board.length * (strip.across.to - strip.across.from)) / 1e6,
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
