/** Leaders: a dot on the thing, a line, and a text beside the line's end. */
import type { Point } from "../geometry/point.ts";
import type { LeaderItem } from "./model.ts";
import type { DrawContext, Shape } from "./shapes.ts";
import { textMarks } from "./text-marks.ts";

/** Millimetres on paper. */
const DOT_RADIUS = 0.45;
const TEXT_GAP = 1;

export function leaderMarks(item: LeaderItem, context: DrawContext): Shape[] {
  const paper = 1 / context.scale;
  const start = item.points[0] as Point;
  const end = item.points.at(-1) as Point;
  const { anchor = "start", weight = "regular", height, text, layer } = item;
  const at: Point = [end[0] + (anchor === "start" ? TEXT_GAP : -TEXT_GAP) * paper, end[1]];
  return [
    { shape: "path", parts: [item.points], closed: false, line: "leader" },
    { shape: "circle", centre: start, radius: DOT_RADIUS * paper, fill: "second" },
    ...textMarks({ kind: "text", layer, at, text, height, anchor, weight, baseline: "middle" }, context),
  ];
}
