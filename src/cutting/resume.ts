/**
 * A plan made again when little of what is asked has changed: sheets and bars of the former plan stand as they are where all their
 * pieces are still asked for, and only the rest is cut anew. A plan made from nothing takes their place where it is cheaper.
 */
import { boundLengths, boundSheets, compare } from "./bounds.ts";
import type { LowerBound } from "./box-bound.ts";
import { lengthPlanCost, sheetPlanCost } from "./cost.ts";
import type { CutResult, LengthPlan, LengthSolver, SheetPlan, SheetSolver, Unplaced } from "./model.ts";

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
  return resumed(solve, former.sheets, {
    isWanted: (request) => {
      const sizes = new Map(request.demands.map((one) => [one.id, `${one.width} ${one.height}`]));
      return ({ placements }) =>
        placements.every(
          ({ demandId, turned, width, height }) =>
            sizes.get(demandId) === (turned ? `${height} ${width}` : `${width} ${height}`),
        );
    },
    piecesOf: ({ placements }) => placements,
    unitsOf: ({ sheets }) => sheets,
    planOf: (sheets, unplaced) => ({ sheets, unplaced }),
    costOf: sheetPlanCost,
    lower: boundSheets,
  });
}

export function resumedLengths(solve: LengthSolver, former: LengthPlan): LengthSolver {
  return resumed(solve, former.bars, {
    isWanted: (request) => {
      const lengths = new Map(request.demands.map((one) => [one.id, one.length]));
      return ({ pieces }) =>
        pieces.every(({ demandId, from, to }) => Math.abs((lengths.get(demandId) ?? 0) - (to - from)) < 1e-4);
    },
    piecesOf: ({ pieces }) => pieces,
    unitsOf: ({ bars }) => bars,
    planOf: (bars, unplaced) => ({ bars, unplaced }),
    costOf: lengthPlanCost,
    lower: boundLengths,
  });
}

interface Asked<Stock extends Counted> {
  readonly stock: readonly Stock[];
  readonly demands: readonly { readonly id: string }[];
}

interface Planned {
  readonly unplaced: readonly Unplaced[];
}

/** What sheets and lengths do not share. */
interface Ways<One extends Unit, Request extends Asked<Counted>, Plan extends Planned> {
  /** Tells of a unit whether all its pieces are still asked for as they are. */
  readonly isWanted: (request: Request) => (unit: One) => boolean;
  readonly piecesOf: (unit: One) => readonly { readonly demandId: string }[];
  readonly unitsOf: (plan: Plan) => readonly One[];
  readonly planOf: (units: One[], unplaced: Plan["unplaced"]) => Plan;
  readonly costOf: (plan: Plan, stock: Request["stock"]) => number;
  readonly lower: (request: Request, chosen: ReadonlySet<number>) => LowerBound;
}

function resumed<One extends Unit, Request extends Asked<Counted>, Plan extends Planned>(
  solve: (request: Request) => CutResult<Plan>,
  former: readonly One[],
  { isWanted, piecesOf, unitsOf, planOf, costOf, lower }: Ways<One, Request, Plan>,
): (request: Request) => CutResult<Plan> {
  return (request) => {
    const kept = stillWanted(former, request.stock, isWanted(request));
    const placed = new Set(kept.flatMap((unit) => piecesOf(unit).map(({ demandId }) => demandId)));
    const rest = solve({
      ...request,
      stock: lessUsed(request.stock, kept),
      demands: request.demands.filter(({ id }) => !placed.has(id)),
    });
    const { unplaced } = rest.plan;
    const plan = planOf(renumbered([...kept, ...unitsOf(rest.plan)]), unplaced);
    const cost = costOf(plan, request.stock);
    const fresh = kept.length === 0 ? rest : solve(request);
    if (isBetter(fresh, { plan, cost })) return fresh;
    const own = compare({ unplaced, cost }, lower(request, placedOf(request.demands, unplaced)));
    return { ...fresh, plan, cost, bound: strongerOf(own, fresh, unplaced, cost) };
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
