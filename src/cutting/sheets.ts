import { boundSheets } from "./bounds.ts";
import { sheetCost, sheetPlanCost, tidySum } from "./cost.ts";
import { toSteps } from "./grid.ts";
import type { Item, PackedSheet, Panel } from "./guillotine.ts";
import { fitsAlone } from "./guillotine.ts";
import type { CutResult, CutSheet, SheetPlan, SheetRequest, Unplaced, UnplacedReason } from "./model.ts";
import { searchSheets } from "./sheet-search.ts";
import { drawSheet } from "./sheet-tree.ts";

const usualOffcut = 200;

/**
 * A plan for cutting the demands from the stock with straight cuts right through, its cost, and a bound on what any
 * such plan can cost. Never throws: a piece that can't be had is listed with why. Same request, same plan.
 */
export function cutSheets(request: SheetRequest): CutResult<SheetPlan> {
  const seed = request.seed ?? 1;
  const kerf = toSteps(request.kerf);
  const panels = request.stock.map((_, stock) => panelOf(request, stock));
  const packed: PackedSheet[] = [];
  const unplaced: Unplaced[] = [];
  let iterations = 0;

  for (const kind of new Set(request.demands.map((demand) => demand.kind ?? ""))) {
    const usable = panels.filter((panel) => (request.stock[panel.stock]?.kind ?? "") === kind);
    const items: Item[] = [];
    request.demands.forEach((demand, index) => {
      if ((demand.kind ?? "") !== kind) return;
      const item = {
        demand: index,
        width: toSteps(demand.width) + kerf,
        height: toSteps(demand.height) + kerf,
        turnable: demand.mayTurn,
      };
      const reason = whyNever(item, usable, request);
      if (reason === undefined) items.push(item);
      else unplaced.push({ demandId: demand.id, reason });
    });
    const found = searchSheets({
      items,
      panels: usable,
      available: request.stock.map((stock) => stock.count ?? Number.POSITIVE_INFINITY),
      stages: request.stages ?? Number.POSITIVE_INFINITY,
      budget: request.budget ?? 300,
      seed,
      bound: boundSheets(request, new Set(items.map((item) => item.demand))).bound,
    });
    iterations += found.iterations;
    packed.push(...found.sheets);
    for (const item of found.left) {
      unplaced.push({ demandId: request.demands[item.demand]?.id ?? "", reason: "stock-used-up" });
    }
  }

  const plan = { sheets: draw(packed, request), unplaced };
  const cost = sheetPlanCost(plan, request.stock);
  return { plan, cost, bound: boundOf(plan, cost, request), iterations, seed };
}

function panelOf(request: SheetRequest, stock: number): Panel {
  const sheet = request.stock[stock];
  if (sheet === undefined) return { stock, width: 0, height: 0, cost: 0, turnable: false };
  const grow = toSteps(request.kerf) - 2 * toSteps(sheet.trim ?? 0);
  return {
    stock,
    width: toSteps(sheet.width) + grow,
    height: toSteps(sheet.height) + grow,
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
      kerf: toSteps(request.kerf),
      trim: toSteps(stock.trim ?? 0),
      keepOffcutFrom: request.keepOffcutFrom ?? usualOffcut,
    });
  });
}

/** The bound for the pieces that are in the plan; best is proven only if nothing that could be had is missing. */
function boundOf(plan: SheetPlan, cost: number, request: SheetRequest): CutResult<SheetPlan>["bound"] {
  const missing = new Set(plan.unplaced.map((one) => one.demandId));
  const placed = new Set(request.demands.flatMap((demand, index) => (missing.has(demand.id) ? [] : [index])));
  const { bound, how } = boundSheets(request, placed);
  const value = tidySum([bound]);
  const complete = plan.unplaced.every((one) => one.reason !== "stock-used-up");
  return { bound: value, gap: cost > 0 ? (cost - value) / cost : 0, proven: complete && value >= cost, how };
}
