import { toGridSteps } from "../units/length.ts";
import type { Boxes, BoxStock, LowerBound } from "./box-bound.ts";
import { boundBoxes } from "./box-bound.ts";
import { barCost, sheetCost, tidySum } from "./cost.ts";
import { coverOf } from "./cover.ts";
import { commonDivisor } from "./divisor.ts";
import { dualFeasibleFunctions } from "./dual-feasible.ts";
import { largePieceBounds } from "./large-pieces.ts";
import type { Bound, BoundMethod, LengthRequest, SheetRequest, Unplaced } from "./model.ts";
import { usableRuns } from "./runs.ts";

/**
 * What cutting the chosen demands (by their place in the request) costs at least: for each kind, the best over pairs
 * of dual feasible functions of the cheapest stock that is worth as much as the pieces. Kinds are summed.
 */
export function boundSheets(request: SheetRequest, chosen: ReadonlySet<number>): LowerBound {
  const kerf = toGridSteps(request.kerf);
  const demands = request.demands.filter((_, index) => chosen.has(index));
  const kinds = new Set(demands.map((demand) => demand.kind ?? ""));
  return sumOf(
    [...kinds].map((kind) => {
      const ofKind = request.stock.filter((one) => (one.kind ?? "") === kind);
      const turnable = ofKind.some((one) => one.grain !== true);
      const boxes = demands
        .filter((demand) => (demand.kind ?? "") === kind)
        .map((demand) => ({
          width: toGridSteps(demand.width) + kerf,
          height: toGridSteps(demand.height) + kerf,
          turns: demand.mayTurn && turnable,
        }));
      const stock = ofKind.map((one) => ({
        width: toGridSteps(one.width) + kerf - 2 * toGridSteps(one.trim ?? 0),
        height: toGridSteps(one.height) + kerf - 2 * toGridSteps(one.trim ?? 0),
        cost: sheetCost(one),
        count: one.count ?? Number.POSITIVE_INFINITY,
      }));
      const fit = stock.filter((one) => one.width > 0 && one.height > 0);
      const groups = grouped(boxes);
      const byMeasure = boundBoxes(groups, fit);
      const byNumber = boundByLarge(groups, fit);
      return byNumber > byMeasure.bound + 1e-9 ? { bound: byNumber, how: "large-pieces" } : byMeasure;
    }),
  );
}

/** By pieces too large to lie beside each other: of use where all sheets are of one size and price and nothing turns. */
function boundByLarge(boxes: readonly Boxes[], stock: readonly BoxStock[]): number {
  const [sheet, ...others] = stock;
  const same = others.every(
    ({ width, height, cost }) => width === sheet?.width && height === sheet.height && cost === sheet.cost,
  );
  if (sheet === undefined || !same || boxes.some(({ turns }) => turns)) return 0;
  const unit = commonDivisor([sheet, ...boxes].flatMap(({ width, height }) => [width, height]));
  const inUnits = <Box extends { width: number; height: number }>(one: Box): Box => ({
    ...one,
    width: one.width / unit,
    height: one.height / unit,
  });
  const { l0, l1, l2, l3 } = largePieceBounds(boxes.map(inUnits), inUnits(sheet));
  return Math.max(l0, l1, l2, l3) * sheet.cost;
}

/** Equal boxes counted once, in the order they first come. */
function grouped(boxes: readonly Omit<Boxes, "count">[]): Boxes[] {
  const groups = new Map<string, Boxes>();
  for (const box of boxes) {
    const key = `${box.width} ${box.height} ${box.turns}`;
    groups.set(key, { ...box, count: (groups.get(key)?.count ?? 0) + 1 });
  }
  return [...groups.values()];
}

/** The same for lengths: a bar is worth the sum over its sound runs. Sections are bounded one by one and summed. */
export function boundLengths(request: LengthRequest, chosen: ReadonlySet<number>): LowerBound {
  const demands = request.demands.filter((_, index) => chosen.has(index));
  const sections = new Set(demands.map((demand) => demand.section));
  return sumOf([...sections].map((section) => boundSection(request, section, demands)));
}

function boundSection(
  request: LengthRequest,
  section: string,
  demands: LengthRequest["demands"],
): LowerBound {
  const kerf = toGridSteps(request.kerf);
  const lengths = demands
    .filter((demand) => demand.section === section)
    .map((demand) => toGridSteps(demand.length) + kerf);
  const bars = request.stock
    .filter((stock) => stock.section === section)
    .map((stock) => ({
      runs: usableRuns(stock, request).map((run) => run.to - run.from + kerf),
      cost: barCost(stock),
      count: stock.count ?? Number.POSITIVE_INFINITY,
    }));
  const longest = Math.max(0, ...bars.flatMap((bar) => bar.runs));
  const cover = coverOf(bars);
  let best: LowerBound = { bound: 0, how: "none" };
  dualFeasibleFunctions([...new Set(lengths)], longest).forEach((f, index) => {
    const need = lengths.reduce((sum, length) => sum + (length <= longest ? f(length) : 0), 0);
    const worth = bars.map((bar) => bar.runs.reduce((sum, run) => sum + f(run), 0));
    const bound = cover.roundUp(cover.cheapest(need, worth));
    if (bound > best.bound + 1e-9) best = { bound, how: index === 0 ? "total" : "dual-feasible" };
  });
  return best;
}

/** The method that says most of how a sum of bounds was reached. */
export function strongest(hows: readonly BoundMethod[]): BoundMethod {
  return methods.find((method) => hows.includes(method)) ?? "none";
}

const methods = ["guillotine-lp", "pattern-lp", "dual-feasible", "large-pieces", "total"] as const;

/** The bound on a whole of which the parts share no stock. */
export function sumOf(bounds: readonly LowerBound[]): LowerBound {
  const bound = bounds.reduce((sum, one) => sum + one.bound, 0);
  if (bound === 0) return { bound: 0, how: "none" };
  return { bound, how: strongest(bounds.map(({ how }) => how)) };
}

/** How near a plan's cost is to its bound; best is proven only if nothing that could be had is left out. */
export function compare(plan: { unplaced: readonly Unplaced[]; cost: number }, lower: LowerBound): Bound {
  const bound = tidySum([lower.bound]);
  const complete = plan.unplaced.every((one) => one.reason !== "stock-used-up");
  return {
    bound,
    gap: plan.cost > 0 ? (plan.cost - bound) / plan.cost : 0,
    proven: complete && bound >= plan.cost,
    how: lower.how,
  };
}
