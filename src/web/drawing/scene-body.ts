/** A scene as markup in millimetres of paper, with its model's origin at 0 0, and the room that it takes for one reader. */
import type { Rect } from "../../geometry/rect.ts";
import { layers } from "../../output/svg/marks.ts";
import { shapeBounds } from "../../scene/bounds.ts";
import { drawList } from "../../scene/draw-list.ts";
import type { Scene } from "../../scene/model.ts";
import type { Reader } from "../../text/say.ts";

export interface SceneBody {
  readonly scene: Scene;
  /** Elements of the renderer; its texts are escaped there. */
  readonly markup: string;
  /** Model mm, for this reader alone: a scene's own bounds hold every reader. */
  readonly bounds: Rect;
}

export function sceneBody(scene: Scene, reader: Reader): SceneBody {
  const marks = drawList(scene, reader);
  const markup = layers(marks, { scale: scene.scale, from: [0, 0], to: [0, 0] });
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const mark of marks) {
    const { x, y } = shapeBounds(mark, scene.scale);
    left = Math.min(left, x[0]);
    right = Math.max(right, x[1]);
    bottom = Math.min(bottom, y[0]);
    top = Math.max(top, y[1]);
  }
  return { scene, markup, bounds: left > right ? scene.bounds : { x: [left, right], y: [bottom, top] } };
}
