/**
 * A sheet sawn step by step, as its numbered cuts say: each goes right through one part in hand, and in the end every piece is one.
 * Shares no code with the solvers.
 */
import type { NumberedCut } from "../cut-order.ts";
import type { CutSheet, Rectangle, SheetStock } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { atMost, same } from "./problem.ts";
import type { SawStep } from "./saw-reach.ts";

export type SawStepCode = "part-not-in-hand" | "cut-not-through" | "number-wrong" | "piece-not-freed";

type SawnCut = Pick<NumberedCut, "number" | "region" | "from" | "to">;

/** Everything that keeps the cuts, made one after another, from freeing the sheet's pieces; `kerf` in mm. */
export function replayCuts(replay: {
  readonly sheet: CutSheet;
  readonly stock: SheetStock;
  readonly cuts: readonly SawnCut[];
  readonly kerf: number;
  readonly where: string;
}): CutProblem<SawStepCode>[] {
  const { sheet, stock, cuts, kerf, where } = replay;
  const problems: CutProblem<SawStepCode>[] = [];
  const trim = stock.trim ?? 0;
  const hand: Rectangle[] = [
    { x: trim, y: trim, width: stock.width - 2 * trim, height: stock.height - 2 * trim },
  ];
  const take = (part: Rectangle): boolean => {
    const at = hand.findIndex((one) => isSame(one, part));
    if (at >= 0) hand.splice(at, 1);
    return at >= 0;
  };
  cuts.forEach(({ number, region, from, to }, index) => {
    const report = (code: SawStepCode) =>
      problems.push({ code, where: `${where}/cuts/${index}`, parameters: {} });
    if (number !== index + 1) report("number-wrong");
    if (!take(region)) {
      report("part-not-in-hand");
      return;
    }
    const { x, y, width, height } = region;
    const upright = same(from[0], to[0]);
    const ends = upright ? [y, y + height] : [x, x + width];
    const [start, end] = upright ? [from[1], to[1]] : [from[0], to[0]];
    const [edge, far, at] = upright ? [x, x + width, from[0]] : [y, y + height, from[1]];
    const isThrough =
      same(start, ends[0] ?? 0) && same(end, ends[1] ?? 0) && (upright || same(from[1], to[1]));
    if (!isThrough || atMost(at, edge) || atMost(far, at)) {
      report("cut-not-through");
      return;
    }
    const beyond = far - at - kerf;
    hand.push(upright ? { ...region, width: at - x } : { ...region, height: at - y });
    if (!atMost(beyond, 0)) {
      hand.push(
        upright ? { x: at + kerf, y, width: beyond, height } : { x, y: at + kerf, width, height: beyond },
      );
    }
  });
  sheet.placements.forEach((placement, index) => {
    if (take(placement)) return;
    problems.push({ code: "piece-not-freed", where: `${where}/placements/${index}`, parameters: {} });
  });
  return problems;
}

/** @param sheet the kerf, mm, and what the sheet weighs, kg a square metre */
export function sheetSteps(
  cuts: readonly SawnCut[],
  { kerf, kgPerM2 }: { readonly kerf: number; readonly kgPerM2: number },
): SawStep[] {
  return cuts.map(({ number, region, from, to }) => {
    const upright = same(from[0], to[0]);
    const off = upright ? from[0] - region.x : from[1] - region.y;
    const beyond = Math.max(0, (upright ? region.width : region.height) - off - kerf);
    return {
      cut: number,
      part: region,
      off: Math.min(off, beyond),
      kg: (region.width * region.height * kgPerM2) / MM2_PER_M2,
    };
  });
}

const MM2_PER_M2 = 1e6;

function isSame(one: Rectangle, other: Rectangle): boolean {
  return (
    same(one.x, other.x) &&
    same(one.y, other.y) &&
    same(one.width, other.width) &&
    same(one.height, other.height)
  );
}
