/**
 * A scene as one reader sees it: every text said, dimensions, leaders, hatches and symbols taken apart into the five
 * marks that any renderer can draw. Positions stay in model millimetres, text heights in millimetres on paper.
 */

import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import { type Reader, say } from "../text/say.ts";
import { dimensionMarks } from "./dimension.ts";
import { hatchLines } from "./hatch.ts";
import { leaderMarks } from "./leader.ts";
import type { Item, Scene, SceneText } from "./model.ts";
import type { FillRole, InkRole, LayerName, LineRole } from "./roles.ts";
import { symbolMarks } from "./symbol.ts";
import { textMarks } from "./text-marks.ts";

/** What may be painted: a stroke, a fill, or both (fill first). */
export interface Paint {
  readonly line?: LineRole;
  readonly fill?: FillRole | InkRole;
}

export interface PathShape extends Paint {
  readonly shape: "path";
  /** Each an open line, or a ring of the (even-odd) area. */
  readonly parts: readonly Polygon[];
  readonly closed: boolean;
}

export interface CircleShape extends Paint {
  readonly shape: "circle";
  readonly centre: Point;
  readonly radius: number;
}

export interface ArcShape {
  readonly shape: "arc";
  readonly centre: Point;
  readonly radius: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly line: LineRole;
}

/** One line of text; the point is on its base line. */
export interface TextShape {
  readonly shape: "text";
  readonly at: Point;
  readonly text: string;
  /** Height of capitals, millimetres on paper. */
  readonly height: number;
  readonly anchor: "start" | "middle" | "end";
  readonly angleDeg: 0 | 90;
  readonly weight: "regular" | "bold";
  readonly ink: InkRole;
}

export type Shape = PathShape | CircleShape | ArcShape | TextShape;

/** A shape, with the item that it belongs to. */
export type Mark = Shape & { readonly layer: LayerName; readonly of?: string; readonly from: Item["kind"] };

export function sayText(text: SceneText, reader: Reader): string {
  return typeof text === "string" ? text : say(text, reader);
}

/** The marks of a scene in painting order. */
export function drawList(scene: Pick<Scene, "items" | "scale">, reader: Reader): Mark[] {
  return scene.items.flatMap((item) =>
    itemShapes(item, { scale: scene.scale, reader }).map(
      (shape): Mark => ({
        ...shape,
        layer: item.layer,
        from: item.kind,
        ...(item.of === undefined ? {} : { of: item.of }),
      }),
    ),
  );
}

export interface DrawContext {
  readonly scale: number;
  readonly reader: Reader;
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
