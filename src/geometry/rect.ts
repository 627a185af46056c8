/** Rectangles along the axes of a frame, in millimetres. */
import { common, type Interval, overlaps } from "./interval.ts";
import type { Point } from "./point.ts";

export interface Rect {
  readonly x: Interval;
  readonly y: Interval;
}

export function rectArea(rect: Rect): number {
  return (rect.x[1] - rect.x[0]) * (rect.y[1] - rect.y[0]);
}

/** The corners counter-clockwise from the lower left. */
export function rectOutline({ x, y }: Rect): Point[] {
  return [
    [x[0], y[0]],
    [x[1], y[0]],
    [x[1], y[1]],
    [x[0], y[1]],
  ];
}

export function rectsOverlap(a: Rect, b: Rect): boolean {
  return overlaps(a.x, b.x) && overlaps(a.y, b.y);
}

export function commonRect(a: Rect, b: Rect): Rect | undefined {
  const x = common(a.x, b.x);
  const y = common(a.y, b.y);
  return x && y ? { x, y } : undefined;
}

export function rectContains(rect: Rect, point: Point): boolean {
  return point[0] >= rect.x[0] && point[0] <= rect.x[1] && point[1] >= rect.y[0] && point[1] <= rect.y[1];
}
