/** Bounds of drawings over every reader, and the one way to make a scene. */
import type { Rect } from "../geometry/rect.ts";
import { LANGUAGES } from "../text/catalogue.ts";
import type { Message } from "../text/message.ts";
import type { Reader } from "../text/say.ts";
import { itemShapes } from "./draw-list.ts";
import type { Item, Scene } from "./model.ts";
import { LINE_WIDTHS } from "./roles.ts";
import type { DrawContext, Shape } from "./shapes.ts";
import { textWidth } from "./text-widths.ts";

/** Every way a text can be read: the room that a scene keeps does not depend on who reads it. */
export const READERS: readonly Reader[] = LANGUAGES.flatMap((language): Reader[] => [
  { language, units: "mm", denominator: 16 },
  { language, units: "feet-inch", denominator: 16 },
  { language, units: "feet-inch", denominator: 32 },
]);

/** How far letters reach under the base line, in heights of capitals. */
const DESCENT = 0.35;

/** Makes a scene whose bounds hold everything drawn, with `margin` millimetres of paper round it. */
export function makeScene({
  id,
  title,
  scale,
  items,
  margin = 2,
}: {
  id: string;
  title: Message;
  scale: number;
  items: readonly Item[];
  margin?: number;
}): Scene {
  const box = new Box();
  for (const item of items) {
    const readers =
      item.kind === "text" || item.kind === "dimension" || item.kind === "leader" ? READERS : [READERS[0]];
    for (const reader of readers) {
      if (!reader) continue;
      const context: DrawContext = { scale, reader };
      for (const shape of itemShapes(item, context)) box.take(shape, scale);
    }
  }
  return { id, title, scale, items, bounds: box.grown((margin + LINE_WIDTHS.extraWide / 2) / scale) };
}

/** The box of one shape, model mm, its line's width left out. */
export function shapeBounds(shape: Shape, scale: number): Rect {
  return shapesBounds([shape], scale);
}

/** The box of everything drawn, model mm, lines' widths left out; upside down where there is nothing. */
export function shapesBounds(shapes: readonly Shape[], scale: number): Rect {
  const box = new Box();
  for (const shape of shapes) box.take(shape, scale);
  return box.asTaken();
}

class Box {
  private left = Infinity;
  private right = -Infinity;
  private bottom = Infinity;
  private top = -Infinity;

  private point(x: number, y: number): void {
    if (x < this.left) this.left = x;
    if (x > this.right) this.right = x;
    if (y < this.bottom) this.bottom = y;
    if (y > this.top) this.top = y;
  }

  take(shape: Shape, scale: number): void {
    if (shape.shape === "path")
      for (const part of shape.parts) for (const point of part) this.point(point[0], point[1]);
    else if (shape.shape === "text") this.text(shape, scale);
    else {
      const { centre, radius } = shape;
      this.point(centre[0] - radius, centre[1] - radius);
      this.point(centre[0] + radius, centre[1] + radius);
    }
  }

  private text(shape: Extract<Shape, { shape: "text" }>, scale: number): void {
    const long = textWidth(shape) / scale;
    const start = shape.anchor === "start" ? 0 : shape.anchor === "middle" ? -long / 2 : -long;
    const high = shape.height / scale;
    const [x, y] = shape.at;
    if (shape.angleDeg === 0) {
      this.point(x + start, y - high * DESCENT);
      this.point(x + start + long, y + high);
    } else {
      this.point(x - high, y + start);
      this.point(x + high * DESCENT, y + start + long);
    }
  }

  asTaken(): Rect {
    return { x: [this.left, this.right], y: [this.bottom, this.top] };
  }

  grown(by: number): Rect {
    if (this.left > this.right) return { x: [0, 0], y: [0, 0] };
    return { x: [this.left - by, this.right + by], y: [this.bottom - by, this.top + by] };
  }
}
