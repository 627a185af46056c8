/**
 * Cuts a long list of lengths batch by batch, in the facade's order, so that a building of many faces takes time in
 * proportion to its pieces. The plan is one plan, and its bound is that of all its pieces together.
 */
import { boundLengths, compare } from "../bounds.ts";
import { lengthPlanCost } from "../cost.ts";
import type { CutBar, LengthDemand, LengthSolver } from "../model.ts";

/** Pieces cut together. Common bars waste little more in batches of hundreds than all at once. */
const BATCH = 250;

/** For stock without a count alone: batches do not know what others have used. */
export function inBatches(solve: LengthSolver): LengthSolver {
  return (request) => {
    if (request.demands.length <= BATCH || request.stock.some(({ count }) => count !== undefined)) {
      return solve(request);
    }
    const results = batchesOf(request.demands).map((demands) => solve({ ...request, demands }));
    const unplaced = results.flatMap(({ plan }) => plan.unplaced);
    const plan = { bars: renumbered(results.flatMap(({ plan: { bars } }) => bars)), unplaced };
    const missing = new Set(unplaced.map(({ demandId }) => demandId));
    const placed = new Set(request.demands.flatMap(({ id }, index) => (missing.has(id) ? [] : [index])));
    const cost = lengthPlanCost(plan, request.stock);
    return {
      plan,
      cost,
      bound: compare({ unplaced, cost }, boundLengths(request, placed)),
      iterations: results.reduce((sum, one) => sum + one.iterations, 0),
      seed: results[0]?.seed ?? 1,
    };
  };
}

/** Even batches: a last one of a few pieces would waste its bars. */
function batchesOf(demands: readonly LengthDemand[]): LengthDemand[][] {
  const count = Math.ceil(demands.length / BATCH);
  const size = Math.ceil(demands.length / count);
  return Array.from({ length: count }, (_, i) => demands.slice(i * size, (i + 1) * size));
}

/** Bars of one stock are counted through. */
function renumbered(bars: readonly CutBar[]): CutBar[] {
  const used = new Map<string, number>();
  return bars.map((bar) => {
    const index = used.get(bar.stockId) ?? 0;
    used.set(bar.stockId, index + 1);
    return { ...bar, index };
  });
}
