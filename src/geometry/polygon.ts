/** Simple polygons, in millimetres. */
import { snap } from "../units/length.ts";
import type { Interval } from "./interval.ts";
import { cross, type Point } from "./point.ts";
import { type Rect, rectOutline } from "./rect.ts";

export type Polygon = readonly Point[];

/** Signed area, positive counter-clockwise (mm²). */
export function signedArea(polygon: Polygon): number {
  let twice = 0;
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i] as Point;
    const b = polygon[(i + 1) % polygon.length] as Point;
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice / 2;
}

export function polygonBounds(polygon: Polygon): Rect {
  let left = Infinity;
  let right = -Infinity;
  let bottom = Infinity;
  let top = -Infinity;
  for (const point of polygon) {
    if (point[0] < left) left = point[0];
    if (point[0] > right) right = point[0];
    if (point[1] < bottom) bottom = point[1];
    if (point[1] > top) top = point[1];
  }
  return { x: [left, right], y: [bottom, top] };
}

/** Whether a polygon's bounds share more than an edge with a rectangle. */
export function boundsOverlap(polygon: Polygon, x: Interval, y: Interval): boolean {
  return (
    polygon.some((point) => point[0] < x[1]) &&
    polygon.some((point) => point[0] > x[0]) &&
    polygon.some((point) => point[1] < y[1]) &&
    polygon.some((point) => point[1] > y[0])
  );
}

/** The same polygon, counter-clockwise. */
export function counterClockwise(polygon: Polygon): Polygon {
  return signedArea(polygon) < 0 ? [...polygon].reverse() : polygon;
}

/** Whether a point lies inside or on the edge of a polygon. */
export function polygonContains(polygon: Polygon, point: Point): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const a = polygon[i] as Point;
    const b = polygon[j] as Point;
    if (cross(a, b, point) === 0 && between(a, b, point)) return true;
    if (a[1] > point[1] !== b[1] > point[1]) {
      const x = a[0] + ((point[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]);
      if (point[0] < x) inside = !inside;
    }
  }
  return inside;
}

function between(a: Point, b: Point, p: Point): boolean {
  return (
    p[0] >= Math.min(a[0], b[0]) &&
    p[0] <= Math.max(a[0], b[0]) &&
    p[1] >= Math.min(a[1], b[1]) &&
    p[1] <= Math.max(a[1], b[1])
  );
}

/** Whether two segments cross at a point inside both. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const d1 = cross(a, b, c);
  const d2 = cross(a, b, d);
  const d3 = cross(c, d, a);
  const d4 = cross(c, d, b);
  return d1 * d2 < 0 && d3 * d4 < 0;
}

/** Whether the polygon's edges neither cross nor touch each other away from their common corners. */
export function isSimple(polygon: Polygon): boolean {
  const n = polygon.length;
  if (n < 3) return false;
  for (let i = 0; i < n; i++) {
    const a = polygon[i] as Point;
    const b = polygon[(i + 1) % n] as Point;
    if (a[0] === b[0] && a[1] === b[1]) return false;
    for (let j = i + 1; j < n; j++) {
      const c = polygon[j] as Point;
      const d = polygon[(j + 1) % n] as Point;
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      if (neighbours) {
        const shared = j === i + 1 ? b : a;
        const far = j === i + 1 ? d : c;
        const near = j === i + 1 ? a : b;
        // A fold back along the same line makes the polygon touch itself.
        if (cross(near, shared, far) === 0 && dot(near, shared, far) > 0) return false;
        continue;
      }
      if (segmentsCross(a, b, c, d)) return false;
      if (touches(a, b, c) || touches(a, b, d) || touches(c, d, a) || touches(c, d, b)) return false;
    }
  }
  return Math.abs(signedArea(polygon)) > 0;
}

function dot(a: Point, corner: Point, b: Point): number {
  return (a[0] - corner[0]) * (b[0] - corner[0]) + (a[1] - corner[1]) * (b[1] - corner[1]);
}

/** Whether a point lies on a segment, its ends included. */
export function touches(a: Point, b: Point, p: Point): boolean {
  return cross(a, b, p) === 0 && between(a, b, p);
}

/** Whether a rectangle lies wholly inside a simple polygon (touching its edges is inside). */
export function rectInsidePolygon(rect: Rect, polygon: Polygon): boolean {
  const corners = rectOutline(rect);
  if (!corners.every((corner) => polygonContains(polygon, corner))) return false;
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i] as Point;
    const b = polygon[(i + 1) % polygon.length] as Point;
    if (segmentEntersRect(a, b, rect)) return false;
  }
  return true;
}

/** Whether some part of the segment lies strictly inside the rectangle (Liang–Barsky clipping). */
function segmentEntersRect(a: Point, b: Point, { x, y }: Rect): boolean {
  const outside =
    (a[0] <= x[0] && b[0] <= x[0]) ||
    (a[0] >= x[1] && b[0] >= x[1]) ||
    (a[1] <= y[0] && b[1] <= y[0]) ||
    (a[1] >= y[1] && b[1] >= y[1]);
  if (outside) return false;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  // A segment along an axis that is not outside crosses between the sides it runs along.
  const alongX: Interval = dx === 0 ? [0, 1] : ordered((x[0] - a[0]) / dx, (x[1] - a[0]) / dx);
  const alongY: Interval = dy === 0 ? [0, 1] : ordered((y[0] - a[1]) / dy, (y[1] - a[1]) / dy);
  return Math.max(0, alongX[0], alongY[0]) < Math.min(1, alongX[1], alongY[1]);
}

function ordered(p: number, q: number): Interval {
  return p < q ? [p, q] : [q, p];
}

/** The stretches of the vertical line at x that lie inside the polygon, bottom to top. */
export function sliceVertical(polygon: Polygon, x: number): Interval[] {
  // A convex outline, which nearly all are, is crossed twice: no list has to be made and sorted.
  let count = 0;
  let first = 0;
  let second = 0;
  let crossings: number[] | undefined;
  for (let i = 0, n = polygon.length; i < n; i++) {
    const a = polygon[i] as Point;
    const b = polygon[i + 1 < n ? i + 1 : 0] as Point;
    if (a[0] > x === b[0] > x) continue;
    const y = a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
    count += 1;
    if (count === 1) first = y;
    else if (count === 2) second = y;
    else {
      crossings ??= [first, second];
      crossings.push(y);
    }
  }
  if (!crossings) return count === 2 ? [ordered(first, second)] : [];
  crossings.sort((p, q) => p - q);
  const result: Interval[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    result.push([crossings[i] as number, crossings[i + 1] as number]);
  }
  return result;
}

/** A circle as a regular polygon drawn round it, so that nothing inside the circle is left out. */
export function circumscribed({
  centre,
  radius,
  sides,
}: {
  centre: Point;
  radius: number;
  sides: number;
}): Polygon {
  const r = radius / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i): Point => {
    const angle = ((i + 0.5) * 2 * Math.PI) / sides;
    return [snap(centre[0] + r * Math.cos(angle)), snap(centre[1] + r * Math.sin(angle))];
  });
}
