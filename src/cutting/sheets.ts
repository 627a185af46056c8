import { toGridSteps } from "../units/length.ts";
import { boundSheets, compare, sumOf } from "./bounds.ts";
import { sheetCost, sheetPlanCost } from "./cost.ts";
import type { Item, PackedSheet, Panel } from "./guillotine.ts";
import { fitsAlone } from "./guillotine.ts";
import type {
  CutResult,
  CutSheet,
  SheetPlan,
  SheetRequest,
  SheetStock,
  Unplaced,
  UnplacedReason,
} from "./model.ts";
import { searchSheets } from "./sheet-search.ts";
import { drawSheet } from "./sheet-tree.ts";

const usualOffcut = 200;
const usualBudget = 300;

/**
 * A plan for cutting the demands from the stock with straight cuts right through, its cost, and a bound on what any
 * such plan can cost. Never throws: a piece that can't be had is listed with why. Same request, same plan.
 */
export function cutSheets(request: SheetRequest): CutResult<SheetPlan> {
  const seed = request.seed ?? 1;
  const kinds = new Set(request.demands.map((demand) => demand.kind ?? ""));
  const parts = [...kinds].map((kind) => cutKind(request, kind, seed));
  const unplaced = parts.flatMap((part) => part.unplaced);
  const plan = {
    sheets: draw(
      parts.flatMap((part) => part.sheets),
      request,
    ),
    unplaced,
  };
  const cost = sheetPlanCost(plan, request.stock);
  const bound = compare({ unplaced, cost }, sumOf(parts.map((part) => part.lower)));
  return { plan, cost, bound, iterations: parts.reduce((sum, part) => sum + part.iterations, 0), seed };
}

function cutKind(request: SheetRequest, kind: string, seed: number) {
  const kerf = toGridSteps(request.kerf);
  const panels = request.stock.flatMap((stock, index) =>
    (stock.kind ?? "") === kind ? [panelOf(stock, index, kerf)] : [],
  );
  const items: Item[] = [];
  const unplaced: Unplaced[] = [];
  request.demands.forEach((demand, index) => {
    if ((demand.kind ?? "") !== kind) return;
    const item = {
      demand: index,
      width: toGridSteps(demand.width) + kerf,
      height: toGridSteps(demand.height) + kerf,
      turnable: demand.mayTurn,
    };
    const reason = whyNever(item, panels, request);
    if (reason === undefined) items.push(item);
    else unplaced.push({ demandId: demand.id, reason });
  });
  const chosen = new Set(items.map((item) => item.demand));
  const lower = boundSheets(request, chosen);
  const found = searchSheets({
    items,
    panels,
    available: request.stock.map((stock) => stock.count ?? Number.POSITIVE_INFINITY),
    stages: request.stages ?? Number.POSITIVE_INFINITY,
    budget: request.budget ?? usualBudget,
    seed,
    bound: lower.bound,
  });
  for (const item of found.left) {
    chosen.delete(item.demand);
    unplaced.push({ demandId: request.demands[item.demand]?.id ?? "", reason: "stock-used-up" });
  }
  return {
    sheets: found.sheets,
    unplaced,
    iterations: found.iterations,
    // What is left out takes no stock, so the bound is that of the pieces placed.
    lower: found.left.length === 0 ? lower : boundSheets(request, chosen),
  };
}

function panelOf(sheet: SheetStock, stock: number, kerf: number): Panel {
  const grow = kerf - 2 * toGridSteps(sheet.trim ?? 0);
  return {
    stock,
    width: toGridSteps(sheet.width) + grow,
    height: toGridSteps(sheet.height) + grow,
    cost: sheetCost(sheet),
    turnable: sheet.grain !== true,
  };
}

function whyNever(item: Item, panels: readonly Panel[], request: SheetRequest): UnplacedReason | undefined {
  if (panels.length === 0) return "no-stock";
  const stages = request.stages ?? Number.POSITIVE_INFINITY;
  const fitting = panels.filter((panel) => fitsAlone(item, panel, stages));
  if (fitting.length === 0) return "too-large";
  return fitting.some((panel) => (request.stock[panel.stock]?.count ?? 1) > 0) ? undefined : "stock-used-up";
}

function draw(packed: readonly PackedSheet[], request: SheetRequest): CutSheet[] {
  const used = new Map<number, number>();
  const ordered = [...packed].sort((a, b) => a.panel.stock - b.panel.stock);
  return ordered.flatMap((one) => {
    const stock = request.stock[one.panel.stock];
    if (stock === undefined) return [];
    const index = used.get(one.panel.stock) ?? 0;
    used.set(one.panel.stock, index + 1);
    return drawSheet({
      packed: one,
      stock,
      index,
      demands: request.demands,
      kerf: toGridSteps(request.kerf),
      trim: toGridSteps(stock.trim ?? 0),
      keepOffcutFrom: request.keepOffcutFrom ?? usualOffcut,
    });
  });
}
