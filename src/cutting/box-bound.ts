import { coverOf } from "./cover.ts";
import type { DualFeasible } from "./dual-feasible.ts";
import { dualFeasibleFunctions } from "./dual-feasible.ts";
import type { BoundMethod } from "./model.ts";

export interface LowerBound {
  readonly bound: number;
  readonly how: BoundMethod;
}

/** Equal rectangles to be cut, in steps, grown. */
export interface Boxes {
  readonly width: number;
  readonly height: number;
  readonly turns: boolean;
  readonly count: number;
}

export interface BoxStock {
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly count: number;
}

/** The best bound over pairs of dual feasible functions, one across and one up. */
export function boundBoxes(boxes: readonly Boxes[], stock: readonly BoxStock[]): LowerBound {
  const widest = Math.max(0, ...stock.map((one) => one.width));
  const highest = Math.max(0, ...stock.map((one) => one.height));
  const cover = coverOf(stock);
  const across = dualFeasibleFunctions(sides(boxes, "width"), widest);
  const up = dualFeasibleFunctions(sides(boxes, "height"), highest);
  const lying = boxes.map((box) => ({ width: box.height, height: box.width }));
  const tables = {
    straightX: across.map((f) => values(f, boxes, "width", widest)),
    straightY: up.map((f) => values(f, boxes, "height", highest)),
    turnedX: across.map((f) => values(f, lying, "width", widest)),
    turnedY: up.map((f) => values(f, lying, "height", highest)),
    stockX: across.map((f) => values(f, stock, "width", widest)),
    stockY: up.map((f) => values(f, stock, "height", highest)),
  };
  const worth = new Float64Array(stock.length);
  // A side longer than every sheet rules that way of laying the piece out.
  const fits = (box: { width: number; height: number }) => box.width <= widest && box.height <= highest;
  const upright = boxes.map(fits);
  const turned = boxes.map((box, index) => box.turns && fits(lying[index] ?? box));

  let best: LowerBound = { bound: 0, how: "none" };
  for (let i = 0; i < across.length; i++) {
    for (let j = 0; j < up.length; j++) {
      const need = needOf(i, j);
      for (let s = 0; s < stock.length; s++) {
        worth[s] = (tables.stockX[i]?.[s] ?? 0) * (tables.stockY[j]?.[s] ?? 0);
      }
      const bound = cover.roundUp(cover.cheapest(need, worth));
      if (bound > best.bound + 1e-9) best = { bound, how: i === 0 && j === 0 ? "total" : "dual-feasible" };
    }
  }
  return best;

  function needOf(i: number, j: number): number {
    const [sx, sy, tx, ty] = [tables.straightX[i], tables.straightY[j], tables.turnedX[i], tables.turnedY[j]];
    if (sx === undefined || sy === undefined || tx === undefined || ty === undefined) return 0;
    let need = 0;
    for (let box = 0; box < boxes.length; box++) {
      const straight = upright[box] === true ? (sx[box] ?? 0) * (sy[box] ?? 0) : Number.POSITIVE_INFINITY;
      const least = turned[box] === true ? Math.min(straight, (tx[box] ?? 0) * (ty[box] ?? 0)) : straight;
      if (least < Number.POSITIVE_INFINITY) need += (boxes[box]?.count ?? 0) * least;
    }
    return need;
  }
}

function sides(boxes: readonly Boxes[], side: "width" | "height"): number[] {
  return boxes.flatMap((box) => (box.turns ? [box.width, box.height] : [box[side]]));
}

function values(
  f: DualFeasible,
  boxes: readonly { readonly width: number; readonly height: number }[],
  side: "width" | "height",
  most: number,
): Float64Array {
  return Float64Array.from(boxes, (box) => f(Math.min(box[side], most)));
}
