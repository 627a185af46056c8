/** Level strips within a wall and less its openings. Most are cut squarely or along a rake, without the polygon library. */
import { overlaps, subtractIntervals } from "../../geometry/interval.ts";
import { cross, type Point } from "../../geometry/point.ts";
import { type Polygon, rectInsidePolygon } from "../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import { intersect, type Region, subtract } from "../../geometry/region.ts";
import { snap } from "../../units/length.ts";
import { NO_HOLES } from "../facade.ts";

/** What of a strip lies within a wall's outline and outside its openings. */
export function stripWithin(outline: Polygon, strip: Rect, cuts: readonly Rect[]): Region[] {
  if (rectInsidePolygon(strip, outline)) return stripLess(strip, cuts);
  const within = bandWithin(outline, strip);
  const clips = cuts.map(rectOutline);
  return clips.length === 0 ? within : within.flatMap((part) => subtract(part, clips));
}

/** A rectangle within an outline: side by side cut off where the outline is convex, as under a rake. */
export function bandWithin(outline: Polygon, { x, y }: Rect): Region[] {
  if (!isConvex(outline)) return intersect(outline, rectOutline({ x, y }));
  let left: Polygon = outline;
  for (const [axis, limit, side] of [
    [0, x[0], 1],
    [0, x[1], -1],
    [1, y[0], 1],
    [1, y[1], -1],
  ] as const) {
    left = beyond(left, { axis, limit, side });
  }
  return left.length < 3 ? [] : [{ outline: left, holes: NO_HOLES }];
}

function isConvex(polygon: Polygon): boolean {
  return polygon.every((point, i) => {
    const next = polygon[(i + 1) % polygon.length] as Point;
    const last = polygon[(i + 2) % polygon.length] as Point;
    return cross(point, next, last) >= 0;
  });
}

/** What of a convex polygon lies on one side of a level or upright line. */
function beyond(
  polygon: Polygon,
  { axis, limit, side }: { readonly axis: 0 | 1; readonly limit: number; readonly side: 1 | -1 },
): Polygon {
  const kept: Point[] = [];
  for (let i = 0; i < polygon.length; i++) {
    const a = polygon[i] as Point;
    const b = polygon[(i + 1) % polygon.length] as Point;
    const [from, to] = [(a[axis] - limit) * side, (b[axis] - limit) * side];
    if (from >= 0) kept.push(a);
    if (from * to >= 0) continue;
    const share = from / (from - to);
    const other = axis === 0 ? 1 : 0;
    const across = snap(a[other] + share * (b[other] - a[other]));
    kept.push(axis === 0 ? [limit, across] : [across, limit]);
  }
  return kept;
}

/** @param cuts rectangles that overlap the strip and not each other */
function stripLess(strip: Rect, cuts: readonly Rect[]): Region[] {
  if (cuts.length === 0) return [{ outline: rectOutline(strip), holes: NO_HOLES }];
  const [bottom, top] = strip.y;
  const through = cuts.filter(({ y }) => y[0] <= bottom && y[1] >= top);
  const rest = through.length === cuts.length ? [] : cuts.filter((cut) => !through.includes(cut));
  return subtractIntervals(
    strip.x,
    through.map(({ x }) => x),
  ).flatMap((x) =>
    notched(
      { x, y: strip.y },
      rest.filter((cut) => overlaps(cut.x, x)),
    ),
  );
}

function notched(strip: Rect, cuts: readonly Rect[]): Region[] {
  if (!plain(strip, cuts)) return subtract(rectOutline(strip), cuts.map(rectOutline));
  const { x, y } = strip;
  const sorted = [...cuts].sort((a, b) => a.x[0] - b.x[0]);
  const below = sorted.filter((cut) => cut.y[0] <= y[0]);
  const above = sorted.filter((cut) => cut.y[1] >= y[1]).reverse();
  const outline: Point[] = [
    [x[0], y[0]],
    ...below.flatMap(({ x: [from, to], y: [, high] }): Point[] => [
      [from, y[0]],
      [from, high],
      [to, high],
      [to, y[0]],
    ]),
    [x[1], y[0]],
    [x[1], y[1]],
    ...above.flatMap(({ x: [from, to], y: [low] }): Point[] => [
      [to, y[1]],
      [to, low],
      [from, low],
      [from, y[1]],
    ]),
    [x[0], y[1]],
  ];
  const inside = sorted.filter((cut) => cut.y[0] > y[0] && cut.y[1] < y[1]);
  const holes = inside.map((cut): Polygon => rectOutline(cut).reverse());
  return [{ outline, holes: holes.length > 0 ? holes : NO_HOLES }];
}

/** Whether every cut stands off the strip's ends and off the other cuts, so that none parts what is left. */
function plain({ x }: Rect, cuts: readonly Rect[]): boolean {
  return cuts.every(
    (cut, i) =>
      cut.x[0] > x[0] &&
      cut.x[1] < x[1] &&
      cuts.every((other, j) => i === j || other.x[1] < cut.x[0] || other.x[0] > cut.x[1]),
  );
}
