/** How a plan fits its picture: millimetres of the building to the picture's own pixels, Y up. */
import type { Point } from "../../geometry/point.ts";

/** Pixels of the picture; the page fits it to its column. */
export const SIZE = { width: 280, height: 190 };
/** Kept free round the walls, to draw on (mm). */
const ROOM = 2500;
/** What an empty picture shows: room for a house's first wall and those that turn away from it. */
const EMPTY = { x: [0, 9000], y: [0, 4000] } as const;

export interface PlanFrame {
  readonly toPicture: (at: Point) => Point;
  readonly toPlan: (at: Point) => Point;
  /** Where the lines of the grid cross the picture. */
  readonly grid: { readonly x: readonly number[]; readonly y: readonly number[] };
}

/** @param every between two lines of the grid (mm) */
export function framed(points: readonly Point[], every: number): PlanFrame {
  const xs = [...points.map(([x]) => x), ...EMPTY.x];
  const ys = [...points.map(([, y]) => y), ...EMPTY.y];
  const [left, right] = [Math.min(...xs) - ROOM, Math.max(...xs) + ROOM];
  const [low, high] = [Math.min(...ys) - ROOM, Math.max(...ys) + ROOM];
  const k = Math.min(SIZE.width / (right - left), SIZE.height / (high - low));
  const middle: Point = [(left + right) / 2, (low + high) / 2];
  const toPicture = ([x, y]: Point): Point => [
    SIZE.width / 2 + (x - middle[0]) * k,
    SIZE.height / 2 - (y - middle[1]) * k,
  ];
  const toPlan = ([x, y]: Point): Point => [
    middle[0] + (x - SIZE.width / 2) / k,
    middle[1] - (y - SIZE.height / 2) / k,
  ];
  const [from, to] = [toPlan([0, SIZE.height]), toPlan([SIZE.width, 0])];
  return {
    toPicture,
    toPlan,
    grid: {
      x: linesIn(from[0], to[0], every).map((x) => toPicture([x, 0])[0]),
      y: linesIn(from[1], to[1], every).map((y) => toPicture([0, y])[1]),
    },
  };
}

function linesIn(from: number, to: number, every: number): number[] {
  const first = Math.ceil(from / every);
  return Array.from(
    { length: Math.max(0, Math.floor(to / every) - first + 1) },
    (_, i) => (first + i) * every,
  );
}
