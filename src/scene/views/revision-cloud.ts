/** Clouds round what changed since the revision before: neighbours share one. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { type Rect, rectsOverlap } from "../../geometry/rect.ts";
import type { FaceLayout, PieceKind } from "../../setout/facade.ts";
import { makeScene } from "../bounds.ts";
import type { Item, Scene } from "../model.ts";
import { layerName } from "../roles.ts";

/** Millimetres on paper: from the piece to its cloud, and the width of a bow. */
const OFF = 2;
const BOW = 5;

/** The scene with a cloud round every changed piece of the face that is of one of the kinds. */
export function withClouds(
  scene: Scene,
  face: FaceLayout,
  { changed, kinds }: { readonly changed: ReadonlySet<string>; readonly kinds: readonly PieceKind[] },
): Scene {
  const pieces = face.pieces.filter(({ mark, kind }) => kinds.includes(kind) && changed.has(mark));
  if (pieces.length === 0) return scene;
  const off = OFF / scene.scale;
  const boxes = pieces.map(({ outline }): Rect => {
    const { x, y } = polygonBounds(outline);
    return { x: [x[0] - off, x[1] + off], y: [y[0] - off, y[1] + off] };
  });
  return makeScene({
    ...scene,
    items: [...scene.items, ...joined(boxes).flatMap((box) => cloudItems(box, scene.scale))],
  });
}

/** Boxes that touch become one, until none do. */
function joined(boxes: readonly Rect[]): Rect[] {
  const apart: Rect[] = [];
  for (const box of boxes) {
    let own = box;
    for (;;) {
      const at = apart.findIndex((other) => rectsOverlap(other, own));
      const [other] = at < 0 ? [] : apart.splice(at, 1);
      if (!other) break;
      own = {
        x: [Math.min(own.x[0], other.x[0]), Math.max(own.x[1], other.x[1])],
        y: [Math.min(own.y[0], other.y[0]), Math.max(own.y[1], other.y[1])],
      };
    }
    apart.push(own);
  }
  return apart;
}

/** Half circles along each side, bulging outward. */
function cloudItems({ x, y }: Rect, scale: number): Item[] {
  const side = (from: number, to: number, each: (middle: number, radius: number) => Item): Item[] => {
    const count = Math.max(1, Math.round(((to - from) * scale) / BOW));
    const step = (to - from) / count;
    return Array.from({ length: count }, (_, i) => each(from + (i + 0.5) * step, step / 2));
  };
  const bow = (centre: readonly [number, number], radius: number, fromDeg: number): Item => ({
    kind: "arc",
    layer: layerName("FRAME"),
    centre,
    radius,
    fromDeg,
    toDeg: fromDeg + 180,
    line: "visible",
  });
  return [
    ...side(x[0], x[1], (at, radius) => bow([at, y[1]], radius, 0)),
    ...side(x[0], x[1], (at, radius) => bow([at, y[0]], radius, 180)),
    ...side(y[0], y[1], (at, radius) => bow([x[0], at], radius, 90)),
    ...side(y[0], y[1], (at, radius) => bow([x[1], at], radius, 270)),
  ];
}
