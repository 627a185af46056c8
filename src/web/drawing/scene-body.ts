/** A drawing as elements in millimetres of paper, with its model's origin at 0 0, and the room that it takes for one reader. */
import type { Rect } from "../../geometry/rect.ts";
import { type Joining, type LayerElements, layerElements } from "../../output/svg/marks.ts";
import { shapesBounds } from "../../scene/bounds.ts";
import { drawList } from "../../scene/draw-list.ts";
import type { Item, Scene } from "../../scene/model.ts";
import type { Reader } from "../../text/say.ts";

export interface Body {
  /** Elements of the renderer; its texts are escaped there. */
  readonly layers: readonly LayerElements[];
  /** Model mm, for this reader alone: a scene's own bounds hold every reader. Upside down where nothing is drawn. */
  readonly bounds: Rect;
}

export interface SceneBody extends Body {
  readonly scene: Scene;
}

export function bodyOf(
  items: readonly Item[],
  {
    scale,
    reader,
    join = "circles",
  }: { readonly scale: number; readonly reader: Reader; readonly join?: Joining },
): Body {
  const marks = drawList({ items, scale }, reader);
  const layers = layerElements(marks, { scale, from: [0, 0], to: [0, 0] }, { join });
  return { layers, bounds: shapesBounds(marks, scale) };
}

export function sceneBody(scene: Scene, reader: Reader): SceneBody {
  const { layers, bounds } = bodyOf(scene.items, { scale: scene.scale, reader });
  return { scene, layers, bounds: bounds.x[0] > bounds.x[1] ? scene.bounds : bounds };
}
