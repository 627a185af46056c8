/** What lies along a joint: the setting-out knows the strip, its neighbours are found by their edges. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { FaceLayout, Joint } from "../../setout/facade.ts";
import { GRID_MM } from "../../units/length.ts";

/** Edges that ought to be one may lie some steps of the grid apart after sums and differences. */
const NEAR = 4 * GRID_MM;

interface Neighbour {
  readonly name: string;
  readonly bounds: Rect;
}

/** Makes the lookup for one face: marks of cladding pieces in their order, then ids of openings. */
export function neighboursOn(face: FaceLayout): (joint: Joint) => string[] {
  const all: Neighbour[] = [
    ...face.pieces
      .filter(({ kind }) => kind === "sheet" || kind === "board")
      .map(({ mark, outline }) => ({ name: mark, bounds: polygonBounds(outline) })),
    ...face.openings.map(({ id, region }) => ({ name: id, bounds: region })),
  ];
  return ({ region }) => {
    const strip = polygonBounds(region);
    return all.filter(({ bounds }) => touch(strip, bounds)).map(({ name }) => name);
  };
}

/** Whether two rectangles share a stretch of edge: one axis meets end to end, the other overlaps. */
function touch(a: Rect, b: Rect): boolean {
  const shared = (axis: "x" | "y"): number =>
    Math.min(a[axis][1], b[axis][1]) - Math.max(a[axis][0], b[axis][0]);
  const [x, y] = [shared("x"), shared("y")];
  return Math.max(x, y) > NEAR && Math.min(x, y) > -NEAR;
}
