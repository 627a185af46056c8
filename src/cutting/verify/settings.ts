/**
 * How often the saw is set, counted from the cuts as they stand on the drawn sheets and bars, against what a plan says of it. Shares
 * no code with the solvers.
 */
import type { NumberedCut } from "../cut-order.ts";
import type { CutBar } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { same } from "./problem.ts";

/** One cut: places that tell it from others, and how far off edge or stop the blade is set, mm. */
interface SetCut {
  readonly places: readonly number[];
  readonly off: number;
}

interface SetUnit {
  readonly stock: string;
  readonly cuts: readonly SetCut[];
}

export function setSheet(
  stock: string,
  cuts: readonly Pick<NumberedCut, "number" | "region" | "from" | "to">[],
): SetUnit {
  return {
    stock,
    cuts: [...cuts]
      .sort((a, b) => a.number - b.number)
      .map(({ region: { x, y, width, height }, from, to }) => ({
        places: [x, y, width, height, ...from, ...to],
        off: same(from[0], to[0]) ? from[0] - x : from[1] - y,
      })),
  };
}

export function setBar({ stockId, pieces }: CutBar): SetUnit {
  return {
    stock: stockId,
    cuts: pieces.map(({ from, to }) => ({ places: [to - from], off: to - from })),
  };
}

/** @param stated what the plan says of sheets or bars cut in this order, those that are cut alike and follow one another together */
export function checkSettings(
  units: readonly SetUnit[],
  stated: number,
  where: string,
): CutProblem<"settings-wrong">[] {
  let found = 0;
  let off: number | undefined;
  let before: SetUnit | undefined;
  for (const unit of units) {
    if (before === undefined || !isAlike(unit, before)) {
      for (const cut of unit.cuts) {
        if (off === undefined || !same(cut.off, off)) found += 1;
        off = cut.off;
      }
    }
    before = unit;
  }
  return found === stated ? [] : [{ code: "settings-wrong", where, parameters: { stated, found } }];
}

function isAlike(one: SetUnit, other: SetUnit): boolean {
  return (
    one.stock === other.stock &&
    one.cuts.length === other.cuts.length &&
    one.cuts.every(({ places }, at) =>
      places.every((place, i) => same(place, other.cuts[at]?.places[i] ?? Number.NaN)),
    )
  );
}
