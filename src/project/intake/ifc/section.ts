/** What a cut leaves out of an upright plane: half-spaces and prisms as polygons of the plane (mm). */
import type { Point } from "../../../geometry/point.ts";
import type { Polygon } from "../../../geometry/polygon.ts";
import type { Rect } from "../../../geometry/rect.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import type { Cut, HalfSpace, Prism } from "./solids.ts";
import { dot, placed, type Vector } from "./space.ts";

/** An upright plane seen from outside: x to the right, y up from the file's own zero. */
export interface UprightPlane {
  /** Unit vectors in plan. */
  readonly along: Point;
  readonly outward: Point;
  /** How far it stands out from the file's origin (mm). */
  readonly offset: number;
}

/** A cut that only touches the plane takes nothing off (mm). */
const TOUCH_MM = 0.01;

/** Directions whose sine or cosine is less are square to each other. */
const SQUARE = 1e-6;

export function onPlane({ along }: UprightPlane, [x, y, z]: Vector): Point {
  return [x * along[0] + y * along[1], z];
}

/** How far a point stands out from the plane. */
export function outFrom({ outward, offset }: UprightPlane, [x, y]: Vector): number {
  return x * outward[0] + y * outward[1] - offset;
}

/** @param reach what may be left out: all that is asked about */
export function cutPolygons(plane: UprightPlane, { halves, prism }: Cut, reach: Rect): Polygon[] {
  const whole = rectOutline(reach);
  const rings = prism ? prismRings(plane, prism, reach) : [whole];
  return rings.flatMap((ring) => {
    let left: readonly Point[] = ring;
    whole.forEach((from, i) => {
      const to = whole[(i + 1) % whole.length] as Point;
      left = kept(left, ([x, y]) => (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]));
    });
    for (const half of halves) left = kept(left, beyond(plane, half));
    return left.length > 2 ? [left] : [];
  });
}

/** How far a point of the plane lies beyond the half-space's boundary, more than nothing where it belongs to it. */
function beyond(
  { along, outward, offset }: UprightPlane,
  { at, towards }: HalfSpace,
): (point: Point) => number {
  const right = dot(towards, [along[0], along[1], 0]);
  const out = dot(towards, [outward[0] * offset, outward[1] * offset, 0]) - dot(towards, at);
  const parallel = Math.abs(right) < SQUARE && Math.abs(towards[2]) < SQUARE;
  return parallel ? () => (out > TOUCH_MM ? 1 : -1) : ([x, y]) => right * x + towards[2] * y + out;
}

/** The part of a ring where `side` is not less than nothing. */
function kept(ring: readonly Point[], side: (point: Point) => number): Point[] {
  return ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length] as Point;
    const [a, b] = [side(from), side(to)];
    const share = a / (a - b);
    const crossing: Point[] =
      a < 0 !== b < 0 ? [[from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]] : [];
    return a < 0 ? crossing : [from, ...crossing];
  });
}

function prismRings(plane: UprightPlane, { frame, along, ring }: Prism, reach: Rect): Polygon[] {
  const corners = ring.map(([x, y]) => placed(frame, [x, y, 0]));
  const step = outFrom({ ...plane, offset: 0 }, along);
  const length = Math.hypot(...along);
  if (Math.abs(step) > SQUARE * length) {
    return [
      corners.map((corner) => {
        const times = -outFrom(plane, corner) / step;
        return onPlane(plane, [
          corner[0] + along[0] * times,
          corner[1] + along[1] * times,
          corner[2] + along[2] * times,
        ]);
      }),
    ];
  }
  // The prism runs along the plane: it covers strips of it, between the places where its ring passes through.
  const [dx, dy] = onPlane(plane, along).map((one) => one / length) as [number, number];
  const passes = corners.flatMap((from, i): Point[] => {
    const to = corners[(i + 1) % corners.length] as Vector;
    const [a, b] = [outFrom(plane, from), outFrom(plane, to)];
    if (a < 0 === b < 0) return [];
    const share = a / (a - b);
    return [
      onPlane(plane, [
        from[0] + (to[0] - from[0]) * share,
        from[1] + (to[1] - from[1]) * share,
        from[2] + (to[2] - from[2]) * share,
      ]),
    ];
  });
  passes.sort((a, b) => a[0] * dy - a[1] * dx - (b[0] * dy - b[1] * dx));
  const far = 2 * (reach.x[1] - reach.x[0] + reach.y[1] - reach.y[0]);
  const middle: Point = [(reach.x[0] + reach.x[1]) / 2, (reach.y[0] + reach.y[1]) / 2];
  const carried = ([x, y]: Point, by: number): Point => {
    // From the foot of the middle of what is asked about, so that the strip reaches past it both ways.
    const foot = (middle[0] - x) * dx + (middle[1] - y) * dy;
    return [x + dx * (foot + by), y + dy * (foot + by)];
  };
  return Array.from({ length: Math.floor(passes.length / 2) }, (_, i): Polygon => {
    const [a, b] = [passes[2 * i] as Point, passes[2 * i + 1] as Point];
    return [carried(a, -far), carried(b, -far), carried(b, far), carried(a, far)];
  });
}
