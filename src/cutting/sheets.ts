import { toGridSteps } from "../units/length.ts";
import { boundSheets, compare, sumOf } from "./bounds.ts";
import { sheetCost, sheetPlanCost } from "./cost.ts";
import { commonDivisor } from "./divisor.ts";
import { begun, ended, inTurn, takeTo } from "./in-turn.ts";
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
import { sheetSettings } from "./settings.ts";
import { cutAlike } from "./sheet-alike.ts";
import { aroundDefects } from "./sheet-defects.ts";
import type { Panel, PieceType, Sheet } from "./sheet-nodes.ts";
import { fitsAlone } from "./sheet-nodes.ts";
import type { Found } from "./sheet-search.ts";
import { searchSheets } from "./sheet-search.ts";
import { drawSheet, usualOffcut } from "./sheet-tree.ts";
import { stretches } from "./stretches.ts";

const usualBudget = 2000;

/**
 * A plan for cutting the demands from the stock with straight cuts right through, its cost, and a bound on what any
 * such plan can cost. Never throws: a piece that can't be had is listed with why. Same request, same plan.
 */
export function cutSheets(request: SheetRequest): CutResult<SheetPlan> {
  return ended(sheetPlans(request));
}

/**
 * The same, giving the best plan so far every few milliseconds, the first as soon as there is one: the same object until the plan
 * is better or the bound is higher. Who has seen enough stops asking. The last is what `cutSheets` returns.
 */
export function* sheetPlans(request: SheetRequest): Generator<CutResult<SheetPlan>, CutResult<SheetPlan>> {
  if (request.stock.every(({ defects = [] }) => defects.length === 0)) return yield* clearPlans(request);
  const split = aroundDefects(request);
  const run = clearPlans(split.request);
  let seen: CutResult<SheetPlan> | undefined;
  let whole: CutResult<SheetPlan> | undefined;
  for (let next = run.next(); ; next = run.next()) {
    if (whole === undefined || next.value !== seen) whole = split.whole(next.value);
    seen = next.value;
    if (next.done) return whole;
    yield whole;
  }
}

/**
 * What `cutSheets` returns at each effort, going on from the effort before rather than from nothing.
 *
 * @param most the last effort that will be asked for: each is asked for in its turn, rising, and is this one halved and halved again
 */
export function sheetsGoingOn(request: SheetRequest, most: number): (effort: number) => CutResult<SheetPlan> {
  if (request.stock.some(({ defects = [] }) => defects.length > 0)) {
    return (effort) => cutSheets({ ...request, effort });
  }
  const parts = partsOf({ ...request, effort: most });
  return (effort) => {
    takeTo(parts, stretches(request.budget ?? usualBudget, effort).length);
    return resultOf(request, parts, "last");
  };
}

function partsOf(request: SheetRequest) {
  const kinds = new Set(request.demands.map((demand) => demand.kind ?? ""));
  return [...kinds].map((kind) => {
    const job = jobOf(request, kind);
    return { job, ...begun(searchOf(request, job, request.seed ?? 1)) };
  });
}

/** For sheets without defects. */
function* clearPlans(request: SheetRequest): Generator<CutResult<SheetPlan>, CutResult<SheetPlan>> {
  const parts = partsOf(request);
  return yield* inTurn(parts, {
    isOther: (found, before) => found.layout !== before.layout || found.lower !== before.lower,
    resultOf: (way) => resultOf(request, parts, way),
  });
}

type Job = ReturnType<typeof jobOf>;

function searchOf(
  request: SheetRequest,
  { types, panels, limits }: Job,
  seed: number,
): Generator<Found, Found> {
  return searchSheets({
    types,
    panels,
    available: panels.map(({ stock }) => request.stock[stock]?.count ?? Number.POSITIVE_INFINITY),
    ...limits,
    stretches: stretches(request.budget ?? usualBudget, request.effort),
    seed,
    lower: boundSheets(request, new Set(types.flatMap(({ demands }) => demands))),
  });
}

function resultOf(
  request: SheetRequest,
  parts: readonly { readonly job: Job; readonly now: Found }[],
  way: "on the way" | "last",
): CutResult<SheetPlan> {
  const { seed = 1 } = request;
  const drawn = parts.map(({ job, now }) => partOf(request, job, now, way));
  const plan = {
    sheets: drawn.flatMap(({ sheets }) => sheets),
    unplaced: drawn.flatMap(({ unplaced }) => unplaced),
  };
  const cost = sheetPlanCost(plan, request.stock);
  const bound = compare({ unplaced: plan.unplaced, cost }, sumOf(drawn.map(({ lower }) => lower)));
  return { plan, cost, bound, iterations: parts.reduce((sum, { now }) => sum + now.iterations, 0), seed };
}

/** One kind's sheets, what is left out, and the bound. */
function partOf(request: SheetRequest, job: Job, { layout, lower }: Found, way: "on the way" | "last") {
  const { never, types } = job;
  const placed = new Set(types.flatMap(({ demands }) => demands));
  const unplaced = [...never];
  types.forEach(({ demands }, index) => {
    for (const demand of demands.slice(demands.length - (layout.waiting[index] ?? 0))) {
      placed.delete(demand);
      unplaced.push({ demandId: request.demands[demand]?.id ?? "", reason: "stock-used-up" });
    }
  });
  return {
    // What none may see is not worth the time.
    sheets: draw(way === "last" ? alike(request, job, layout.sheets) : layout.sheets, job, request),
    unplaced,
    // What is left out takes no stock, so the bound is that of the pieces placed.
    lower: unplaced.length > never.length ? boundSheets(request, placed) : lower,
  };
}

/** The pieces of one kind by size, in units that divide all sides, and what can never be had. */
function jobOf(request: SheetRequest, kind: string) {
  const kerf = toGridSteps(request.kerf);
  const most = { stages: request.stages ?? Number.POSITIVE_INFINITY, firstCuts: grownLimit(request) };
  const grown = request.stock.flatMap((stock, index) =>
    (stock.kind ?? "") === kind ? [panelOf(stock, index, kerf)] : [],
  );
  const sizes = new Map<string, Omit<PieceType, "demands"> & { demands: number[] }>();
  const never: Unplaced[] = [];
  request.demands.forEach((demand, index) => {
    if ((demand.kind ?? "") !== kind) return;
    const size = sizeOf(demand, kerf);
    const reason = whyNever(size, grown, request, most);
    if (reason !== undefined) {
      never.push({ demandId: demand.id, reason });
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
  return {
    types: [...sizes.values()].map(inUnits),
    panels: fit.map(inUnits),
    limits: { ...most, firstCuts: most.firstCuts / unit },
    unit,
    never,
  };
}

/** Regions are grown by a kerf, and so is what they may measure. */
function grownLimit({ furthestFirstCuts, kerf }: SheetRequest): number {
  return furthestFirstCuts === undefined
    ? Number.POSITIVE_INFINITY
    : toGridSteps(furthestFirstCuts) + toGridSteps(kerf);
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
  limits: Parameters<typeof fitsAlone>[2],
): UnplacedReason | undefined {
  if (panels.length === 0) return "no-stock";
  const fitting = panels.filter((panel) => fitsAlone(size, panel, limits));
  if (fitting.length === 0) return "too-large";
  return fitting.some((panel) => (request.stock[panel.stock]?.count ?? 1) > 0) ? undefined : "stock-used-up";
}

/** Cut alike as far as it can be. */
function alike(request: SheetRequest, job: Job, sheets: readonly Sheet[]): Sheet[] {
  const own = { types: job.types, panels: job.panels, available: job.panels.map(() => 1), ...job.limits };
  return cutAlike(own, sheets, (sheet) => {
    const drawn = drawnOn(sheet, job, request)?.({ index: 0, next: () => undefined });
    const offcut = drawn?.offcuts.reduce((most, { width, height }) => Math.max(most, width * height), 0);
    return { offcut: offcut ?? 0, ...sheetSettings(drawn ?? NOT_CUT) };
  });
}

const NOT_CUT = { stockId: "", tree: { x: 0, y: 0, width: 0, height: 0 } };

function draw(sheets: readonly Sheet[], job: Job, request: SheetRequest): CutSheet[] {
  const { types } = job;
  const used = new Map<number, number>();
  const taken = types.map(() => 0);
  const next = (type: number) => {
    const place = taken[type] ?? 0;
    taken[type] = place + 1;
    return request.demands[types[type]?.demands[place] ?? -1];
  };
  const ordered = [...sheets].sort((a, b) => a.panel.stock - b.panel.stock);
  return ordered.flatMap((sheet) => {
    const index = used.get(sheet.panel.stock) ?? 0;
    used.set(sheet.panel.stock, index + 1);
    return drawnOn(sheet, job, request)?.({ index, next }) ?? [];
  });
}

/** Draws a sheet on its stock; undefined where there is none. */
function drawnOn(sheet: Sheet, { unit }: Job, request: SheetRequest) {
  const stock = request.stock[sheet.panel.stock];
  if (stock === undefined) return undefined;
  return (of: { index: number; next: (type: number) => SheetDemand | undefined }): CutSheet =>
    drawSheet({
      ...of,
      sheet,
      stock,
      steps: unit,
      kerf: toGridSteps(request.kerf),
      trim: toGridSteps(stock.trim ?? 0),
      keepOffcutFrom: request.keepOffcutFrom ?? usualOffcut,
      reach: toGridSteps(request.reach ?? 0) || Number.POSITIVE_INFINITY,
    });
}
