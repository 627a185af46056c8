import { barCost, sheetCost } from "./cost.ts";
import type { DualFeasible } from "./dual-feasible.ts";
import { dualFeasibleFunctions } from "./dual-feasible.ts";
import { commonDivisor, toSteps } from "./grid.ts";
import type { BoundMethod, LengthRequest, SheetRequest } from "./model.ts";
import { usableRuns } from "./runs.ts";

export interface LowerBound {
  readonly bound: number;
  readonly how: BoundMethod;
}

interface Supply {
  readonly worth: number;
  readonly cost: number;
  readonly count: number;
}

/**
 * What cutting the chosen demands (by their place in the request) costs at least: for each kind, the best over pairs
 * of dual feasible functions of the cheapest stock that is worth as much as the pieces.
 */
export function boundSheets(request: SheetRequest, chosen: ReadonlySet<number>): LowerBound {
  const kerf = toSteps(request.kerf);
  const demands = request.demands.filter((_, index) => chosen.has(index));
  const bounds = [...new Set(demands.map((demand) => demand.kind ?? ""))].map((kind) => {
    const turnable = request.stock.some((one) => (one.kind ?? "") === kind && one.grain !== true);
    const boxes = demands
      .filter((demand) => (demand.kind ?? "") === kind)
      .map((demand) => ({
        width: toSteps(demand.width) + kerf,
        height: toSteps(demand.height) + kerf,
        turns: demand.mayTurn && turnable,
      }));
    const panels = request.stock
      .filter((one) => (one.kind ?? "") === kind)
      .map((one) => ({
        width: toSteps(one.width) + kerf - 2 * toSteps(one.trim ?? 0),
        height: toSteps(one.height) + kerf - 2 * toSteps(one.trim ?? 0),
        cost: sheetCost(one),
        count: one.count ?? Number.POSITIVE_INFINITY,
      }))
      .filter((panel) => panel.width > 0 && panel.height > 0);
    return boundBoxes(boxes, panels);
  });
  return sumOf(bounds);
}

interface Box {
  readonly width: number;
  readonly height: number;
  readonly turns: boolean;
}

function boundBoxes(
  boxes: readonly Box[],
  panels: readonly { width: number; height: number; cost: number; count: number }[],
): LowerBound {
  const groups = groupBoxes(boxes);
  const sides = (side: "width" | "height", other: "width" | "height") =>
    [...groups.keys()].flatMap((box) => (box.turns ? [box[side], box[other]] : [box[side]]));
  const widest = Math.max(0, ...panels.map((panel) => panel.width));
  const highest = Math.max(0, ...panels.map((panel) => panel.height));
  const across = dualFeasibleFunctions(sides("width", "height"), widest);
  const up = dualFeasibleFunctions(sides("height", "width"), highest);
  const costs = panels.map((panel) => panel.cost);
  const sizes = [...groups.keys()];
  const times = [...groups.values()];
  const straight = tabled(across, up, sizes);
  const turned = tabled(
    across,
    up,
    sizes.map((box) => ({ width: box.height, height: box.width })),
  );

  let best: LowerBound = { bound: 0, how: "none" };
  across.forEach((f, i) => {
    up.forEach((g, j) => {
      let need = 0;
      for (let box = 0; box < sizes.length; box++) {
        const upright = straight(i, j, box);
        const worth = sizes[box]?.turns === true ? Math.min(upright, turned(i, j, box)) : upright;
        if (worth < Number.POSITIVE_INFINITY) need += (times[box] ?? 0) * worth;
      }
      const supplies = panels.map((panel) => ({ ...panel, worth: f(panel.width) * g(panel.height) }));
      const bound = roundUp(cheapest(need, supplies), costs);
      if (bound > best.bound + 1e-9) best = { bound, how: i === 0 && j === 0 ? "total" : "dual-feasible" };
    });
  });
  return best;

  /** Worth of box number `box` under functions `i` across and `j` up; a side longer than every sheet rules it out. */
  function tabled(
    fs: readonly DualFeasible[],
    gs: readonly DualFeasible[],
    laid: readonly { width: number; height: number }[],
  ): (i: number, j: number, box: number) => number {
    const out = laid.map((box) => box.width > widest || box.height > highest);
    const widths = fs.map((f) => laid.map((box) => f(Math.min(box.width, widest))));
    const heights = gs.map((g) => laid.map((box) => g(Math.min(box.height, highest))));
    return (i, j, box) =>
      out[box] === true ? Number.POSITIVE_INFINITY : (widths[i]?.[box] ?? 0) * (heights[j]?.[box] ?? 0);
  }
}

/** Equal boxes counted once, in the order they first come. */
function groupBoxes(boxes: readonly Box[]): Map<Box, number> {
  const first = new Map<string, Box>();
  const times = new Map<Box, number>();
  for (const box of boxes) {
    const key = `${box.width} ${box.height} ${box.turns}`;
    const same = first.get(key) ?? box;
    first.set(key, same);
    times.set(same, (times.get(same) ?? 0) + 1);
  }
  return times;
}

/** The same for lengths: a bar is worth the sum over its sound runs. Sections are bounded one by one and summed. */
export function boundLengths(request: LengthRequest, chosen: ReadonlySet<number>): LowerBound {
  const kerf = toSteps(request.kerf);
  const demands = request.demands.filter((_, index) => chosen.has(index));
  const bounds = [...new Set(demands.map((demand) => demand.section))].map((section) => {
    const lengths = demands
      .filter((demand) => demand.section === section)
      .map((demand) => toSteps(demand.length) + kerf);
    const bars = request.stock
      .filter((stock) => stock.section === section)
      .map((stock) => ({
        runs: usableRuns(stock, request).map((run) => run.to - run.from + kerf),
        cost: barCost(stock),
        count: stock.count ?? Number.POSITIVE_INFINITY,
      }));
    const longest = Math.max(0, ...bars.flatMap((bar) => bar.runs));
    const costs = bars.map((bar) => bar.cost);
    let best: LowerBound = { bound: 0, how: "none" };
    dualFeasibleFunctions([...new Set(lengths)], longest).forEach((f, i) => {
      const need = lengths.reduce((sum, length) => sum + (length <= longest ? f(length) : 0), 0);
      const supplies = bars.map((bar) => ({
        worth: bar.runs.reduce((sum, run) => sum + f(run), 0),
        cost: bar.cost,
        count: bar.count,
      }));
      const bound = roundUp(cheapest(need, supplies), costs);
      if (bound > best.bound + 1e-9) best = { bound, how: i === 0 ? "total" : "dual-feasible" };
    });
    return best;
  });
  return sumOf(bounds);
}

function sumOf(bounds: readonly LowerBound[]): LowerBound {
  const bound = bounds.reduce((sum, one) => sum + one.bound, 0);
  if (bound === 0) return { bound: 0, how: "none" };
  const dual = bounds.some((one) => one.how === "dual-feasible");
  return { bound, how: dual ? "dual-feasible" : "total" };
}

/** Least cost of stock worth `need` in all, parts of a sheet allowed. All of it where there is too little. */
function cheapest(need: number, supplies: readonly Supply[]): number {
  const ordered = supplies.filter((one) => one.worth > 0).sort((a, b) => a.cost / a.worth - b.cost / b.worth);
  let cost = 0;
  let open = need;
  for (const one of ordered) {
    const used = Math.min(open / one.worth, one.count);
    cost += used * one.cost;
    open -= used * one.worth;
    if (open <= 1e-12) break;
  }
  return cost;
}

/** Every plan costs a whole multiple of the largest unit that divides all costs, where there is one. */
function roundUp(bound: number, costs: readonly number[]): number {
  const scale = 1e6;
  const scaled = costs.map((cost) => Math.round(cost * scale));
  const exact = costs.every((cost, index) => Math.abs(cost * scale - (scaled[index] ?? 0)) < 1e-3);
  if (!exact) return bound;
  const unit = commonDivisor(scaled) / scale;
  return Math.ceil(bound / unit - 1e-9) * unit;
}
