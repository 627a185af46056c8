/**
 * A plan made again when little of what is asked has changed: sheets and bars of the former plan stand as they are where all their
 * pieces are still asked for, and only the rest is cut anew. A plan made from nothing takes their place where it is cheaper.
 */
import { boundLengths, boundSheets, compare } from "./bounds.ts";
import { lengthPlanCost, sheetPlanCost } from "./cost.ts";
import type { LengthPlan, LengthSolver, SheetPlan, SheetSolver, Unplaced } from "./model.ts";

interface Counted {
  readonly id: string;
  readonly count?: number;
}

/** Sheets or bars of a former plan, with the pieces that are cut from each. */
interface Unit {
  readonly stockId: string;
  readonly index: number;
}

export function resumedSheets(solve: SheetSolver, former: SheetPlan): SheetSolver {
  return (request) => {
    const sizes = new Map(request.demands.map((one) => [one.id, `${one.width} ${one.height}`]));
    const kept = stillWanted(former.sheets, request.stock, ({ placements }) =>
      placements.every(
        ({ demandId, turned, width, height }) =>
          sizes.get(demandId) === (turned ? `${height} ${width}` : `${width} ${height}`),
      ),
    );
    const placed = new Set(kept.flatMap(({ placements }) => placements.map(({ demandId }) => demandId)));
    const rest = solve({
      ...request,
      stock: lessUsed(request.stock, kept),
      demands: request.demands.filter(({ id }) => !placed.has(id)),
    });
    const plan = { sheets: renumbered([...kept, ...rest.plan.sheets]), unplaced: rest.plan.unplaced };
    const cost = sheetPlanCost(plan, request.stock);
    const fresh = kept.length === 0 ? rest : solve(request);
    if (isBetter(fresh, { plan, cost })) return fresh;
    const own = compare(
      { unplaced: plan.unplaced, cost },
      boundSheets(request, placedOf(request.demands, plan.unplaced)),
    );
    return { ...fresh, plan, cost, bound: strongerOf(own, fresh, plan.unplaced, cost) };
  };
}

export function resumedLengths(solve: LengthSolver, former: LengthPlan): LengthSolver {
  return (request) => {
    const lengths = new Map(request.demands.map((one) => [one.id, one.length]));
    const kept = stillWanted(former.bars, request.stock, ({ pieces }) =>
      pieces.every(({ demandId, from, to }) => Math.abs((lengths.get(demandId) ?? 0) - (to - from)) < 1e-4),
    );
    const placed = new Set(kept.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId)));
    const rest = solve({
      ...request,
      stock: lessUsed(request.stock, kept),
      demands: request.demands.filter(({ id }) => !placed.has(id)),
    });
    const plan = { bars: renumbered([...kept, ...rest.plan.bars]), unplaced: rest.plan.unplaced };
    const cost = lengthPlanCost(plan, request.stock);
    const fresh = kept.length === 0 ? rest : solve(request);
    if (isBetter(fresh, { plan, cost })) return fresh;
    const own = compare(
      { unplaced: plan.unplaced, cost },
      boundLengths(request, placedOf(request.demands, plan.unplaced)),
    );
    return { ...fresh, plan, cost, bound: strongerOf(own, fresh, plan.unplaced, cost) };
  };
}

/** Units of stock that there still is, all of whose pieces are still asked for. */
function stillWanted<One extends Unit>(
  units: readonly One[],
  stock: readonly Counted[],
  isWanted: (unit: One) => boolean,
): One[] {
  const left = new Map(stock.map(({ id, count = Number.POSITIVE_INFINITY }) => [id, count]));
  return units.filter((unit) => {
    const count = left.get(unit.stockId) ?? 0;
    if (count <= 0 || !isWanted(unit)) return false;
    left.set(unit.stockId, count - 1);
    return true;
  });
}

function lessUsed<One extends Counted>(stock: readonly One[], units: readonly Unit[]): One[] {
  return stock.map((one) => {
    const used = units.filter(({ stockId }) => stockId === one.id).length;
    return one.count === undefined ? one : { ...one, count: one.count - used };
  });
}

function renumbered<One extends Unit>(units: readonly One[]): One[] {
  const used = new Map<string, number>();
  return units.map((unit) => {
    const index = used.get(unit.stockId) ?? 0;
    used.set(unit.stockId, index + 1);
    return { ...unit, index };
  });
}

function placedOf(demands: readonly { readonly id: string }[], unplaced: readonly Unplaced[]): Set<number> {
  const out = new Set(unplaced.map(({ demandId }) => demandId));
  return new Set(demands.flatMap(({ id }, at) => (out.has(id) ? [] : [at])));
}

interface Judged {
  readonly plan: { readonly unplaced: readonly Unplaced[] };
  readonly cost: number;
}

function isBetter(one: Judged, other: Judged): boolean {
  const left = one.plan.unplaced.length - other.plan.unplaced.length;
  return left < 0 || (left === 0 && one.cost < other.cost - 1e-6);
}

/** The search from nothing may have proven more than the bound by measure does; its bound holds where it cut the same pieces. */
function strongerOf(
  own: ReturnType<typeof compare>,
  fresh: Judged & { readonly bound: ReturnType<typeof compare> },
  unplaced: readonly Unplaced[],
  cost: number,
): ReturnType<typeof compare> {
  const same = fresh.plan.unplaced.length === 0 && unplaced.length === 0;
  return same && fresh.bound.bound > own.bound
    ? compare({ unplaced, cost }, { bound: fresh.bound.bound, how: fresh.bound.how })
    : own;
}
