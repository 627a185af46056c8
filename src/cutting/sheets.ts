import { toGridSteps } from "../units/length.ts";
import { boundSheets, compare, sumOf } from "./bounds.ts";
import { sheetCost, sheetPlanCost } from "./cost.ts";
import { commonDivisor } from "./divisor.ts";
import type {
  CutResult,
  CutSheet,
  SheetDemand,
  SheetPlan,
  SheetRequest,
  SheetStock,
  Unplaced,
  UnplacedReason,
} from "./model.ts";
import type { Panel, PieceType, Sheet } from "./sheet-nodes.ts";
import { fitsAlone } from "./sheet-nodes.ts";
import { searchSheets } from "./sheet-search.ts";
import { drawSheet } from "./sheet-tree.ts";

const usualOffcut = 200;
const usualBudget = 1000;

/**
 * A plan for cutting the demands from the stock with straight cuts right through, its cost, and a bound on what any
 * such plan can cost. Never throws: a piece that can't be had is listed with why. Same request, same plan.
 */
export function cutSheets(request: SheetRequest): CutResult<SheetPlan> {
  const seed = request.seed ?? 1;
  const kinds = new Set(request.demands.map((demand) => demand.kind ?? ""));
  const parts = [...kinds].map((kind) => cutKind(request, kind, seed));
  const unplaced = parts.flatMap((part) => part.unplaced);
  const plan = { sheets: parts.flatMap((part) => part.sheets), unplaced };
  const cost = sheetPlanCost(plan, request.stock);
  const bound = compare({ unplaced, cost }, sumOf(parts.map((part) => part.lower)));
  return { plan, cost, bound, iterations: parts.reduce((sum, part) => sum + part.iterations, 0), seed };
}

function cutKind(request: SheetRequest, kind: string, seed: number) {
  const { types, panels, unit, unplaced } = jobOf(request, kind);
  const chosen = new Set(types.flatMap(({ demands }) => demands));
  const lower = boundSheets(request, chosen);
  const stages = request.stages ?? Number.POSITIVE_INFINITY;
  const available = panels.map(({ stock }) => request.stock[stock]?.count ?? Number.POSITIVE_INFINITY);
  const budget = request.budget ?? usualBudget;
  const found = searchSheets({ types, panels, available, stages, budget, seed, lower });
  types.forEach(({ demands }, index) => {
    for (const demand of demands.slice(demands.length - (found.waiting[index] ?? 0))) {
      chosen.delete(demand);
      unplaced.push({ demandId: request.demands[demand]?.id ?? "", reason: "stock-used-up" });
    }
  });
  return {
    sheets: draw(found.sheets, types, unit, request),
    unplaced,
    iterations: found.iterations,
    // What is left out takes no stock, so the bound is that of the pieces placed.
    lower: found.waiting.some((count) => count > 0) ? boundSheets(request, chosen) : found.lower,
  };
}

/** The pieces of one kind by size, in units that divide all sides, and what can never be had. */
function jobOf(request: SheetRequest, kind: string) {
  const kerf = toGridSteps(request.kerf);
  const stages = request.stages ?? Number.POSITIVE_INFINITY;
  const grown = request.stock.flatMap((stock, index) =>
    (stock.kind ?? "") === kind ? [panelOf(stock, index, kerf)] : [],
  );
  const sizes = new Map<string, Omit<PieceType, "demands"> & { demands: number[] }>();
  const unplaced: Unplaced[] = [];
  request.demands.forEach((demand, index) => {
    if ((demand.kind ?? "") !== kind) return;
    const size = sizeOf(demand, kerf);
    const reason = whyNever(size, grown, request, stages);
    if (reason !== undefined) {
      unplaced.push({ demandId: demand.id, reason });
      return;
    }
    const key = `${size.width} ${size.height} ${size.turnable}`;
    const type = sizes.get(key) ?? { ...size, demands: [] };
    type.demands.push(index);
    sizes.set(key, type);
  });
  const fit = grown.filter(({ width, height }) => width > 0 && height > 0);
  const sides = (one: { width: number; height: number }) => [one.width, one.height];
  const unit = commonDivisor([...[...sizes.values()].flatMap(sides), ...fit.flatMap(sides)]);
  const inUnits = <Box extends { width: number; height: number }>(one: Box): Box => ({
    ...one,
    width: one.width / unit,
    height: one.height / unit,
  });
  return { types: [...sizes.values()].map(inUnits), panels: fit.map(inUnits), unit, unplaced };
}

function sizeOf(demand: SheetDemand, kerf: number) {
  return {
    width: toGridSteps(demand.width) + kerf,
    height: toGridSteps(demand.height) + kerf,
    turnable: demand.mayTurn,
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

function whyNever(
  size: ReturnType<typeof sizeOf>,
  panels: readonly Panel[],
  request: SheetRequest,
  stages: number,
): UnplacedReason | undefined {
  if (panels.length === 0) return "no-stock";
  const fitting = panels.filter((panel) => fitsAlone(size, panel, stages));
  if (fitting.length === 0) return "too-large";
  return fitting.some((panel) => (request.stock[panel.stock]?.count ?? 1) > 0) ? undefined : "stock-used-up";
}

function draw(
  sheets: readonly Sheet[],
  types: readonly PieceType[],
  unit: number,
  request: SheetRequest,
): CutSheet[] {
  const used = new Map<number, number>();
  const taken = types.map(() => 0);
  const next = (type: number) => {
    const place = taken[type] ?? 0;
    taken[type] = place + 1;
    return request.demands[types[type]?.demands[place] ?? -1];
  };
  const ordered = [...sheets].sort((a, b) => a.panel.stock - b.panel.stock);
  return ordered.flatMap((sheet) => {
    const stock = request.stock[sheet.panel.stock];
    if (stock === undefined) return [];
    const index = used.get(sheet.panel.stock) ?? 0;
    used.set(sheet.panel.stock, index + 1);
    return drawSheet({
      sheet,
      stock,
      index,
      next,
      steps: unit,
      kerf: toGridSteps(request.kerf),
      trim: toGridSteps(stock.trim ?? 0),
      keepOffcutFrom: request.keepOffcutFrom ?? usualOffcut,
    });
  });
}
