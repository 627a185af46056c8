/**
 * An independent check of length plans. It shares no code with the solvers: only the plain values of the plan.
 */
import type { CutBar, LengthDemand, LengthPlan, LengthRequest, LengthStock, Span } from "../model.ts";
import type { CensusCode } from "./census.ts";
import { checkPieces, checkStock } from "./census.ts";
import type { Claim, ClaimCode, CutProblem } from "./problem.ts";
import { atMost, checkClaim, same } from "./problem.ts";

export type LengthProblemCode =
  | CensusCode
  | ClaimCode
  | "length-wrong"
  | "wrong-section"
  | "too-narrow"
  | "too-thin"
  | "wrong-lot"
  | "outside-stock"
  | "end-trim-missing"
  | "not-sound"
  | "overlap"
  | "kerf-missing"
  | "rest-wrong"
  | "reason-wrong";

type Problem = CutProblem<LengthProblemCode>;

/** Everything wrong with a plan for the request; none: it can be sawn as it stands. `claim` adds cost and bound. */
export function verifyLengthPlan(check: {
  request: LengthRequest;
  plan: LengthPlan;
  claim?: Claim;
}): Problem[] {
  const { request, plan } = check;
  const stock = new Map(request.stock.map((one) => [one.id, one]));
  const demands = new Map(request.demands.map((one) => [one.id, one]));
  const placed = plan.bars.flatMap((bar, i) =>
    bar.pieces.map((one, j) => ({ id: one.demandId, where: `/bars/${i}/pieces/${j}` })),
  );
  const problems: Problem[] = [
    ...checkPieces({ demands: request.demands, placed, unplaced: plan.unplaced }),
    ...checkStock({ stock: request.stock, used: plan.bars, room: "bars" }),
    ...checkReasons(plan, request, demands),
  ];
  plan.bars.forEach((bar, index) => {
    const from = stock.get(bar.stockId);
    if (from !== undefined) problems.push(...checkBar(bar, from, `/bars/${index}`, request, demands));
  });
  if (check.claim === undefined) return problems;
  const cost = plan.bars.reduce((sum, bar) => {
    const one = stock.get(bar.stockId);
    return sum + (one === undefined ? 0 : (one.cost ?? one.length / 1000));
  }, 0);
  return [...problems, ...checkClaim(check.claim, cost)];
}

function checkBar(
  bar: CutBar,
  stock: LengthStock,
  where: string,
  request: LengthRequest,
  demands: ReadonlyMap<string, LengthDemand>,
): Problem[] {
  const problems: Problem[] = [];
  const { kerf } = request;
  bar.pieces.forEach((piece, index) => {
    const at = `${where}/pieces/${index}`;
    const parameters = { piece: piece.demandId, stock: stock.id };
    const demand = demands.get(piece.demandId);
    if (demand !== undefined) {
      problems.push(...unsuited(demand, stock).map((code) => ({ code, where: at, parameters })));
      if (!same(piece.to - piece.from, demand.length)) {
        problems.push({
          code: "length-wrong",
          where: at,
          parameters: { ...parameters, length: demand.length },
        });
      }
    }
    const misplaced = placeFault(piece, stock, request);
    if (misplaced !== undefined) problems.push({ code: misplaced, where: at, parameters });
    bar.pieces.slice(index + 1).forEach((other) => {
      const gap = gapBetween(piece, other);
      const both = { piece: piece.demandId, other: other.demandId, gap };
      if (!atMost(0, gap)) problems.push({ code: "overlap", where: at, parameters: both });
      else if (!atMost(kerf, gap)) problems.push({ code: "kerf-missing", where: at, parameters: both });
    });
  });
  bar.rests.forEach((rest, index) => {
    const free = bar.pieces.every((piece) => atMost(kerf, gapBetween(piece, rest)));
    if (free && placeFault(rest, stock, request) === undefined && rest.to > rest.from) return;
    problems.push({ code: "rest-wrong", where: `${where}/rests/${index}`, parameters: { stock: stock.id } });
  });
  return problems;
}

function unsuited(demand: LengthDemand, stock: LengthStock): LengthProblemCode[] {
  const codes: LengthProblemCode[] = [];
  if (demand.section !== stock.section) codes.push("wrong-section");
  if (demand.minWidth !== undefined && !atMost(demand.minWidth, stock.width ?? 0)) codes.push("too-narrow");
  if (demand.minThickness !== undefined && !atMost(demand.minThickness, stock.thickness ?? 0)) {
    codes.push("too-thin");
  }
  if (demand.lots !== undefined && !demand.lots.some((lot) => lot === stock.lot)) codes.push("wrong-lot");
  return codes;
}

/** Is a stretch of the bar where pieces may be: on the bar, clear of its trimmed ends, in one sound run. */
function placeFault(span: Span, stock: LengthStock, request: LengthRequest): LengthProblemCode | undefined {
  const trim = request.endTrim ?? 0;
  const margin = request.defectMargin ?? 0;
  if (!atMost(0, span.from) || !atMost(span.to, stock.length)) return "outside-stock";
  if (!atMost(trim, span.from) || !atMost(span.to, stock.length - trim)) return "end-trim-missing";
  const sound = stock.sound.some((run) => {
    const before = atMost(run.from, 0) ? 0 : margin;
    const behind = atMost(stock.length, run.to) ? 0 : margin;
    return atMost(run.from + before, span.from) && atMost(span.to, run.to - behind);
  });
  return sound ? undefined : "not-sound";
}

function gapBetween(a: Span, b: Span): number {
  return Math.max(a.from - b.to, b.from - a.to);
}

function checkReasons(
  plan: LengthPlan,
  request: LengthRequest,
  demands: ReadonlyMap<string, LengthDemand>,
): Problem[] {
  return plan.unplaced.flatMap((one, index) => {
    const demand = demands.get(one.demandId);
    if (demand === undefined) return [];
    const ofSection = request.stock.filter((stock) => stock.section === demand.section);
    const suited = ofSection.filter((stock) => unsuited(demand, stock).length === 0);
    const holding = suited.filter((stock) => longestRun(stock, request) >= demand.length - 1e-4);
    const found =
      ofSection.length === 0
        ? "no-stock"
        : suited.length === 0
          ? "no-match"
          : holding.length === 0
            ? "too-large"
            : "stock-used-up";
    const exhausted = holding.every((stock) => {
      const used = plan.bars.filter((bar) => bar.stockId === stock.id).length;
      return stock.count !== undefined && used >= stock.count;
    });
    if (one.reason === found && (found !== "stock-used-up" || exhausted)) return [];
    const parameters = { piece: one.demandId, reason: one.reason };
    return [{ code: "reason-wrong" as const, where: `/unplaced/${index}`, parameters }];
  });
}

function longestRun(stock: LengthStock, request: LengthRequest): number {
  const trim = request.endTrim ?? 0;
  const margin = request.defectMargin ?? 0;
  return stock.sound.reduce((longest, run) => {
    const from = Math.max(trim, run.from + (atMost(run.from, 0) ? 0 : margin));
    const to = Math.min(stock.length - trim, run.to - (atMost(stock.length, run.to) ? 0 : margin));
    return Math.max(longest, to - from);
  }, 0);
}
