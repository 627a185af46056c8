/**
 * An independent check of rip plans and of the strips handed on from them. It shares no code with the solver.
 */
import type { LengthStock, PileBoard, RipDemand, RipPlan, RippedBoard, RipRequest, Span } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { atMost, same } from "./problem.ts";

export type RipProblemCode =
  | "unknown-board"
  | "board-twice"
  | "strip-twice"
  | "unknown-section"
  | "strip-width-wrong"
  | "strip-outside"
  | "overlap"
  | "kerf-missing"
  | "wrong-lot"
  | "too-thin"
  | "supply-wrong"
  | "strip-stock-wrong";

type Problem = CutProblem<RipProblemCode>;

/** Everything wrong with a rip plan; with `strips`, also whether they are what the plan yields, board by board. */
export function verifyRipPlan(check: {
  request: RipRequest;
  plan: RipPlan;
  strips?: readonly LengthStock[];
}): Problem[] {
  const { request, plan } = check;
  const boards = new Map(request.boards.map((board) => [board.id, board]));
  const problems: Problem[] = [];
  const seen = new Set<string>();
  const ids = new Set<string>();
  plan.boards.forEach((ripped, index) => {
    const where = `/boards/${index}`;
    const board = boards.get(ripped.boardId);
    const parameters = { board: ripped.boardId };
    if (board === undefined) problems.push({ code: "unknown-board", where, parameters });
    if (seen.has(ripped.boardId)) problems.push({ code: "board-twice", where, parameters });
    seen.add(ripped.boardId);
    for (const strip of ripped.strips) {
      if (ids.has(strip.id)) problems.push({ code: "strip-twice", where, parameters: { strip: strip.id } });
      ids.add(strip.id);
    }
    if (board !== undefined) problems.push(...checkBoard(ripped, board, request, where));
  });
  problems.push(...checkSupply(plan, request, boards));
  if (check.strips !== undefined) problems.push(...checkStrips(check.strips, plan, boards));
  return problems;
}

function checkBoard(ripped: RippedBoard, board: PileBoard, request: RipRequest, where: string): Problem[] {
  const problems: Problem[] = [];
  const edge = request.straighten ?? 2.5;
  const left = edge + (board.wane?.edge === "left" ? board.wane.width : 0);
  const right = board.width - edge - (board.wane?.edge === "right" ? board.wane.width : 0);
  ripped.strips.forEach((strip, index) => {
    const at = `${where}/strips/${index}`;
    const parameters = { board: board.id, strip: strip.id };
    const report = (code: RipProblemCode) => problems.push({ code, where: at, parameters });
    const width = request.widths.find((one) => one.section === strip.section);
    if (width === undefined) report("unknown-section");
    else {
      if (!same(strip.across.to - strip.across.from, width.width)) report("strip-width-wrong");
      if (width.lots !== undefined && !width.lots.includes(board.lot)) report("wrong-lot");
      if (!atMost(width.minThickness ?? 0, board.thickness)) report("too-thin");
    }
    if (!atMost(left, strip.across.from) || !atMost(strip.across.to, right)) report("strip-outside");
    for (const other of ripped.strips.slice(index + 1)) {
      const gap = Math.max(strip.across.from - other.across.to, other.across.from - strip.across.to);
      if (!atMost(0, gap)) report("overlap");
      else if (!atMost(request.kerf, gap)) report("kerf-missing");
    }
  });
  return problems;
}

/** Lengths had, by width and lot, reckoned again from the boards. */
function checkSupply(plan: RipPlan, request: RipRequest, boards: ReadonlyMap<string, PileBoard>): Problem[] {
  return request.widths.flatMap((width, index) => {
    const had = new Map<string, number>();
    for (const ripped of plan.boards) {
      const board = boards.get(ripped.boardId);
      if (board === undefined) continue;
      const strips = ripped.strips.filter((strip) => strip.section === width.section).length;
      const length = usefulLength(board, width) * strips;
      if (length > 0) had.set(board.lot, (had.get(board.lot) ?? 0) + length);
    }
    const total = [...had.values()].reduce((sum, length) => sum + length, 0);
    const stated = plan.supply[index];
    const right =
      stated !== undefined &&
      stated.section === width.section &&
      close(stated.wanted, width.totalLength) &&
      close(stated.had, total) &&
      close(stated.short, Math.max(0, width.totalLength - total)) &&
      stated.byLot.length === had.size &&
      stated.byLot.every((one) => close(one.had, had.get(one.lot) ?? Number.NaN));
    const parameters = { section: width.section, had: total };
    return right ? [] : [{ code: "supply-wrong" as const, where: `/supply/${index}`, parameters }];
  });
}

function usefulLength(board: PileBoard, width: RipDemand): number {
  return clearSpans(board)
    .map((span) => span.to - span.from)
    .filter((length) => length >= (width.shortest ?? 0))
    .reduce((sum, length) => sum + length, 0);
}

/** The stretches between every two neighbouring ends of defects that no defect covers, joined where they touch. */
function clearSpans(board: PileBoard): Span[] {
  const marks = [0, board.length, ...board.defects.flatMap((one) => [one.from, one.to])]
    .filter((mark) => mark >= 0 && mark <= board.length)
    .sort((a, b) => a - b);
  const spans: Span[] = [];
  for (let index = 1; index < marks.length; index++) {
    const from = marks[index - 1] ?? 0;
    const to = marks[index] ?? 0;
    const middle = (from + to) / 2;
    if (to <= from || board.defects.some((one) => one.from < middle && middle < one.to)) continue;
    const last = spans.at(-1);
    if (last !== undefined && last.to === from) spans[spans.length - 1] = { from: last.from, to };
    else spans.push({ from, to });
  }
  return spans;
}

/** The strips handed on as stock have their board's lot, length, thickness and sound runs, and their own width. */
function checkStrips(
  strips: readonly LengthStock[],
  plan: RipPlan,
  boards: ReadonlyMap<string, PileBoard>,
): Problem[] {
  const planned = plan.boards.flatMap((ripped) =>
    ripped.strips.map((strip) => ({ ...strip, board: boards.get(ripped.boardId) })),
  );
  const problems: Problem[] = [];
  for (const strip of planned) {
    const stock = strips.filter((one) => one.id === strip.id);
    const [one] = stock;
    if (
      one !== undefined &&
      stock.length === 1 &&
      strip.board !== undefined &&
      one.section === strip.section &&
      isOf(one, strip.board, strip.across)
    ) {
      continue;
    }
    problems.push({ code: "strip-stock-wrong", where: "/strips", parameters: { strip: strip.id } });
  }
  if (strips.length !== planned.length) {
    const parameters = { strips: strips.length, planned: planned.length };
    problems.push({ code: "strip-stock-wrong", where: "/strips", parameters });
  }
  return problems;
}

function isOf(stock: LengthStock, board: PileBoard, across: Span): boolean {
  const sound = clearSpans(board);
  return (
    stock.board === board.id &&
    stock.lot === board.lot &&
    stock.count === 1 &&
    stock.length === board.length &&
    stock.thickness === board.thickness &&
    same(stock.width ?? 0, across.to - across.from) &&
    stock.sound.length === sound.length &&
    stock.sound.every(
      (run, index) => same(run.from, sound[index]?.from ?? -1) && same(run.to, sound[index]?.to ?? -1),
    )
  );
}

/** Sums over many boards carry a little dust. */
function close(a: number, b: number): boolean {
  return Math.abs(a - b) < 0.01;
}
