/** A level strip less the openings that it crosses. Most cross it squarely, which is told without the polygon library. */
import { overlaps, subtractIntervals } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, type Region, subtract } from "../../geometry/polygon.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import { NO_HOLES } from "../facade.ts";

/** @param cuts rectangles that overlap the strip and not each other */
export function stripLess(strip: Rect, cuts: readonly Rect[]): Region[] {
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
