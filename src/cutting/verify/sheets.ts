/**
 * An independent check of sheet plans. It shares no code with the solvers: only the plain values of the plan.
 */
import type { CutSheet, Rectangle, SheetDemand, SheetPlan, SheetRequest, SheetStock } from "../model.ts";
import type { CensusCode } from "./census.ts";
import { checkPieces, checkStock } from "./census.ts";
import type { Claim, ClaimCode, CutProblem } from "./problem.ts";
import { atMost, checkClaim, same } from "./problem.ts";
import type { TreeCode } from "./tree.ts";
import { checkTree } from "./tree.ts";

export type SheetProblemCode =
  | CensusCode
  | ClaimCode
  | TreeCode
  | "size-wrong"
  | "turn-not-allowed"
  | "wrong-kind"
  | "outside-stock"
  | "on-defect"
  | "outline-outside"
  | "overlap"
  | "kerf-missing"
  | "not-guillotine"
  | "offcut-wrong"
  | "reason-wrong";

type Problem = CutProblem<SheetProblemCode>;

/** Everything wrong with a plan for the request; none: it can be sawn as it stands. `claim` adds cost and bound. */
export function verifySheetPlan(check: { request: SheetRequest; plan: SheetPlan; claim?: Claim }): Problem[] {
  const { request, plan } = check;
  const stock = new Map(request.stock.map((one) => [one.id, one]));
  const demands = new Map(request.demands.map((one) => [one.id, one]));
  const placed = plan.sheets.flatMap((sheet, i) =>
    sheet.placements.map((one, j) => ({ id: one.demandId, where: `/sheets/${i}/placements/${j}` })),
  );
  const problems: Problem[] = [
    ...checkPieces({ demands: request.demands, placed, unplaced: plan.unplaced }),
    ...checkStock({ stock: request.stock, used: plan.sheets, room: "sheets" }),
    ...checkReasons(plan, request, demands),
  ];
  plan.sheets.forEach((sheet, index) => {
    const from = stock.get(sheet.stockId);
    if (from !== undefined) problems.push(...checkSheet(sheet, from, `/sheets/${index}`, request, demands));
  });
  if (check.claim === undefined) return problems;
  const cost = plan.sheets.reduce((sum, sheet) => {
    const one = stock.get(sheet.stockId);
    return sum + (one === undefined ? 0 : (one.cost ?? (one.width * one.height) / 1_000_000));
  }, 0);
  return [...problems, ...checkClaim(check.claim, cost)];
}

function checkSheet(
  sheet: CutSheet,
  stock: SheetStock,
  where: string,
  request: SheetRequest,
  demands: ReadonlyMap<string, SheetDemand>,
): Problem[] {
  const { kerf } = request;
  const usable = lessTrim(stock);
  const problems: Problem[] = [];
  sheet.placements.forEach((one, index) => {
    const at = `${where}/placements/${index}`;
    const parameters = { piece: one.demandId, stock: stock.id };
    const demand = demands.get(one.demandId);
    if (demand !== undefined) problems.push(...checkPiece(one, demand, stock, at));
    if (!inside(one, usable)) problems.push({ code: "outside-stock", where: at, parameters });
    if (onDefect(one, stock)) problems.push({ code: "on-defect", where: at, parameters });
    sheet.placements.slice(index + 1).forEach((other) => {
      const gap = gapBetween(one, other);
      const both = { piece: one.demandId, other: other.demandId, gap };
      if (!atMost(0, gap)) problems.push({ code: "overlap", where: at, parameters: both });
      else if (!atMost(kerf, gap)) problems.push({ code: "kerf-missing", where: at, parameters: both });
    });
  });
  sheet.offcuts.forEach((offcut, index) => {
    const free = sheet.placements.every((one) => atMost(kerf, gapBetween(one, offcut)));
    if (free && inside(offcut, usable) && !onDefect(offcut, stock)) return;
    problems.push({
      code: "offcut-wrong",
      where: `${where}/offcuts/${index}`,
      parameters: { stock: stock.id },
    });
  });
  if (!separable(sheet.placements, kerf)) {
    problems.push({ code: "not-guillotine", where, parameters: { stock: stock.id, index: sheet.index } });
  }
  const { stages = Number.POSITIVE_INFINITY, furthestFirstCuts = Number.POSITIVE_INFINITY } = request;
  return [...problems, ...checkTree({ sheet, where, usable, kerf, stages, furthestFirstCuts })];
}

function checkPiece(
  one: CutSheet["placements"][number],
  demand: SheetDemand,
  stock: SheetStock,
  where: string,
): Problem[] {
  const problems: Problem[] = [];
  const parameters = { piece: demand.id, stock: stock.id };
  const [width, height] = one.turned ? [demand.height, demand.width] : [demand.width, demand.height];
  if (!same(one.width, width) || !same(one.height, height)) {
    problems.push({ code: "size-wrong", where, parameters: { ...parameters, width, height } });
  }
  if (one.turned && (!demand.mayTurn || stock.grain === true)) {
    problems.push({ code: "turn-not-allowed", where, parameters });
  }
  if ((demand.kind ?? "") !== (stock.kind ?? "")) problems.push({ code: "wrong-kind", where, parameters });
  const within = (demand.outline ?? []).every(
    ([x, y]) => atMost(0, x) && atMost(x, demand.width) && atMost(0, y) && atMost(y, demand.height),
  );
  if (!within) problems.push({ code: "outline-outside", where, parameters });
  return problems;
}

/** The reason that an unplaced piece is given must be true of it. */
function checkReasons(
  plan: SheetPlan,
  request: SheetRequest,
  demands: ReadonlyMap<string, SheetDemand>,
): Problem[] {
  return plan.unplaced.flatMap((one, index) => {
    const demand = demands.get(one.demandId);
    if (demand === undefined) return [];
    const ofKind = request.stock.filter((stock) => (stock.kind ?? "") === (demand.kind ?? ""));
    const holding = ofKind.filter((stock) => holds(stock, demand));
    const right =
      (one.reason === "no-stock" && ofKind.length === 0) ||
      (one.reason === "too-large" &&
        ofKind.length > 0 &&
        (holding.length === 0 || mayRefuse(request, holding))) ||
      (one.reason === "stock-used-up" && holding.length > 0 && usedUp(holding, plan));
    const parameters = { piece: one.demandId, reason: one.reason };
    return right ? [] : [{ code: "reason-wrong" as const, where: `/unplaced/${index}`, parameters }];
  });
}

/** A piece that a bare sheet would hold may be too large for the rules of the cuts or for what is round the defects. */
function mayRefuse({ stages, furthestFirstCuts }: SheetRequest, holding: readonly SheetStock[]): boolean {
  return stages !== undefined || furthestFirstCuts !== undefined || holding.every(hasDefects);
}

function hasDefects({ defects = [] }: SheetStock): boolean {
  return defects.length > 0;
}

/** A sheet with defects may be left where what is round them is too small. */
function usedUp(stock: readonly SheetStock[], plan: SheetPlan): boolean {
  return stock
    .filter((one) => !hasDefects(one))
    .every((one) => {
      const used = plan.sheets.filter((sheet) => sheet.stockId === one.id).length;
      return one.count !== undefined && used >= one.count;
    });
}

function holds(stock: SheetStock, demand: SheetDemand): boolean {
  const { width, height } = lessTrim(stock);
  if (atMost(demand.width, width) && atMost(demand.height, height)) return true;
  const turns = demand.mayTurn && stock.grain !== true;
  return turns && atMost(demand.height, width) && atMost(demand.width, height);
}

function lessTrim(stock: SheetStock): Rectangle {
  const trim = stock.trim ?? 0;
  return { x: trim, y: trim, width: stock.width - 2 * trim, height: stock.height - 2 * trim };
}

function onDefect(box: Rectangle, { defects = [] }: SheetStock): boolean {
  return defects.some((defect) => !atMost(0, gapBetween(box, defect)));
}

function inside(box: Rectangle, outer: Rectangle): boolean {
  return (
    atMost(outer.x, box.x) &&
    atMost(outer.y, box.y) &&
    atMost(box.x + box.width, outer.x + outer.width) &&
    atMost(box.y + box.height, outer.y + outer.height)
  );
}

/** The wider of the gaps along x and y, negative where both overlap: one straight cut needs one of the two. */
function gapBetween(a: Rectangle, b: Rectangle): number {
  const alongX = Math.max(a.x - (b.x + b.width), b.x - (a.x + a.width));
  const alongY = Math.max(a.y - (b.y + b.height), b.y - (a.y + a.height));
  return Math.max(alongX, alongY);
}

/**
 * Can straight cuts right through, a blade wide, part all the pieces from each other? Decided from the pieces alone:
 * if any cut parts them in two, cutting there first loses nothing, as both groups keep every cut they had.
 */
function separable(boxes: readonly Rectangle[], kerf: number): boolean {
  if (boxes.length < 2) return true;
  for (const axis of ["x", "y"] as const) {
    const from = (box: Rectangle) => (axis === "x" ? box.x : box.y);
    const to = (box: Rectangle) => (axis === "x" ? box.x + box.width : box.y + box.height);
    const ordered = [...boxes].sort((a, b) => from(a) - from(b));
    let reach = Number.NEGATIVE_INFINITY;
    for (let index = 0; index < ordered.length; index++) {
      const box = ordered[index];
      if (box === undefined) continue;
      if (index > 0 && atMost(reach + kerf, from(box))) {
        return separable(ordered.slice(0, index), kerf) && separable(ordered.slice(index), kerf);
      }
      reach = Math.max(reach, to(box));
    }
  }
  return false;
}
