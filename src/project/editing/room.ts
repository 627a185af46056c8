/** Where a face has room for something new. */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds, rectInsidePolygon } from "../../geometry/polygon.ts";
import { type Rect, rectsOverlap } from "../../geometry/rect.ts";
import { snap } from "../../units/length.ts";
import type { Face } from "../schema/project.ts";

/** Kept free to what stands beside, so that a piece of cladding fits between (mm); common practice. */
const BESIDE_MM = 200;

/**
 * The place nearest to the one wished for, by its lower left corner (mm), that lies on the face and keeps clear of its
 * openings and penetrations; the wished place itself where there is none.
 */
export function roomOn(
  face: Face,
  { width, height }: { width: number; height: number },
  wished: Point,
): Rect {
  const things = [...face.openings.map(({ x, y }): Rect => ({ x, y })), ...penetrationBoxes(face)];
  const bounds = polygonBounds(face.outline);
  const at = ([x, y]: Point): Rect => ({ x: [x, snap(x + width)], y: [y, snap(y + height)] });
  const starts = (
    want: number,
    size: number,
    sides: readonly Interval[],
    [low, high]: Interval,
  ): number[] => [
    want,
    snap(low + BESIDE_MM),
    snap(high - BESIDE_MM - size),
    ...sides.flatMap(([from, to]) => [snap(to + BESIDE_MM), snap(from - BESIDE_MM - size)]),
  ];
  const xs = starts(
    wished[0],
    width,
    things.map(({ x }) => x),
    bounds.x,
  );
  const ys = starts(
    wished[1],
    height,
    things.map(({ y }) => y),
    bounds.y,
  );
  const kept = things.map(({ x, y }): Rect => ({ x: wider(x), y: wider(y) }));
  const free = xs
    .flatMap((x) => ys.map((y) => [x, y] as const))
    .filter((corner) => {
      const rect = at(corner);
      return rectInsidePolygon(rect, face.outline) && !kept.some((thing) => rectsOverlap(thing, rect));
    });
  // A place at the wished height comes before a nearer one above or below it.
  const far = ([x, y]: Point): number => Math.abs(x - wished[0]) + 4 * Math.abs(y - wished[1]);
  return at(free.sort((a, b) => far(a) - far(b))[0] ?? wished);
}

function wider([from, to]: Interval): Interval {
  return [from - BESIDE_MM, to + BESIDE_MM];
}

function penetrationBoxes({ penetrations = [] }: Face): Rect[] {
  return penetrations.map(({ x, y, diameter }) => ({
    x: [x - diameter / 2, x + diameter / 2],
    y: [y - diameter / 2, y + diameter / 2],
  }));
}
