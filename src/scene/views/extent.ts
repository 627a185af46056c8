/** How far a face reaches in its own frame. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { FaceLayout } from "../../setout/facade.ts";

/** The box of a face's outline and of its zones, which reach round corners; without the ground. */
export function faceExtent(face: FaceLayout): Rect {
  const boxes = [face.outline, ...face.zones.map((zone) => zone.region)].map(polygonBounds);
  return {
    x: [Math.min(...boxes.map(({ x }) => x[0])), Math.max(...boxes.map(({ x }) => x[1]))],
    y: [Math.min(...boxes.map(({ y }) => y[0])), Math.max(...boxes.map(({ y }) => y[1]))],
  };
}

/** The lowest ground along a face, or its lowest point where no ground is told. */
export function lowestGround(face: FaceLayout): number {
  return face.ground.reduce((low, [, y]) => Math.min(low, y), faceExtent(face).y[0]);
}

/** An id as a heading: `west` reads West. */
export function heading(id: string): string {
  return id.slice(0, 1).toUpperCase() + id.slice(1);
}
