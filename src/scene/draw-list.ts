/**
 * A scene as one reader sees it: every text said, dimensions, leaders, hatches and symbols taken apart into the four
 * shapes that any renderer can draw. Positions stay in model millimetres, text heights in millimetres on paper.
 */
import type { Reader } from "../text/say.ts";
import { dimensionMarks } from "./dimension.ts";
import { hatchLines } from "./hatch.ts";
import { leaderMarks } from "./leader.ts";
import type { Item, Scene } from "./model.ts";
import type { FillRole, LineRole } from "./roles.ts";
import type { DrawContext, Mark, Paint, Shape } from "./shapes.ts";
import { symbolMarks } from "./symbol.ts";
import { textMarks } from "./text-marks.ts";

/** The marks of a scene in painting order. */
export function drawList(scene: Pick<Scene, "items" | "scale">, reader: Reader): Mark[] {
  const marks: Mark[] = [];
  const context: DrawContext = { scale: scene.scale, reader };
  for (const item of scene.items) {
    const { layer, kind: from, of } = item;
    for (const shape of itemShapes(item, context))
      marks.push(of === undefined ? { ...shape, layer, from } : { ...shape, layer, from, of });
  }
  return marks;
}

export function itemShapes(item: Item, context: DrawContext): Shape[] {
  switch (item.kind) {
    case "line":
      return [{ shape: "path", parts: [[item.from, item.to]], closed: false, line: item.line }];
    case "polyline":
      return [{ shape: "path", parts: [item.points], closed: false, line: item.line }];
    case "polygon":
      return [
        {
          shape: "path",
          parts: [item.outline, ...(item.holes ?? [])],
          closed: true,
          ...painted(item),
        },
      ];
    case "circle":
      return [{ shape: "circle", centre: item.centre, radius: item.radius, ...painted(item) }];
    case "arc": {
      const { centre, radius, fromDeg, toDeg, line } = item;
      return [{ shape: "arc", centre, radius, fromDeg, toDeg, line }];
    }
    case "hatch":
      return [{ shape: "path", parts: hatchLines(item, context.scale), closed: false, line: "hatch" }];
    case "text":
      return textMarks(item, context);
    case "dimension":
      return dimensionMarks(item, context);
    case "leader":
      return leaderMarks(item, context);
    case "symbol":
      return symbolMarks(item, context.scale);
  }
}

function painted({ line, fill }: { line?: LineRole; fill?: FillRole }): Paint {
  return { ...(line ? { line } : {}), ...(fill ? { fill } : {}) };
}
