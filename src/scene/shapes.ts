/** The four shapes that scenes are taken apart into, which any renderer can draw. */

import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import { type Reader, say } from "../text/say.ts";
import type { Item, SceneText } from "./model.ts";
import type { FillRole, InkRole, LayerName, LineRole } from "./roles.ts";

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
  /** Name of the sheet that it leads to. */
  readonly link?: string;
}

export type Shape = PathShape | CircleShape | ArcShape | TextShape;

/** A shape, with the item that it belongs to. */
export type Mark = Shape & { readonly layer: LayerName; readonly of?: string; readonly from: Item["kind"] };

export function sayText(text: SceneText, reader: Reader): string {
  return typeof text === "string" ? text : say(text, reader);
}

export interface DrawContext {
  readonly scale: number;
  readonly reader: Reader;
}
