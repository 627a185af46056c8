/** The outline of a face that is taken in, cleaned of what its source says twice, and put where faces begin. */
import { distance, type Point } from "../../../geometry/point.ts";
import { counterClockwise, polygonBounds } from "../../../geometry/polygon.ts";
import { snap } from "../../../units/length.ts";
import type { TakenFace, TakenOpening } from "./shape.ts";

/** A point that stands no further off the straight between its neighbours is none (mm). */
const STRAIGHT_WITHIN_MM = 0.01;

/** On the grid, without points that say nothing: repeated ones, and those on the straight between their neighbours. */
export function cleaned(points: readonly Point[]): Point[] {
  const onGrid = points.map(([x, y]): Point => [snap(x), snap(y)]);
  const fresh = onGrid.filter((point, i) => distance(point, onGrid.at(i - 1) as Point) > 0);
  return fresh.filter((point, i) => {
    const [a, b] = [fresh.at(i - 1) as Point, fresh[(i + 1) % fresh.length] as Point];
    const base = distance(a, b);
    if (base === 0) return true;
    const off = Math.abs((b[0] - a[0]) * (a[1] - point[1]) - (a[0] - point[0]) * (b[1] - a[1])) / base;
    const between = (point[0] - a[0]) * (b[0] - point[0]) + (point[1] - a[1]) * (b[1] - point[1]) >= 0;
    return off > STRAIGHT_WITHIN_MM || !between;
  });
}

/** The face with its lower left at the origin, counter-clockwise from its lowest, then leftmost corner; openings in order. */
export function atOrigin(outline: readonly Point[], openings: readonly TakenOpening[]): TakenFace {
  const { x, y } = polygonBounds(outline);
  const [left, low] = [x[0], y[0]];
  const round = counterClockwise(outline).map(([px, py]): Point => [snap(px - left), snap(py - low)]);
  const first = round.reduce((best, [px, py], i) => {
    const [bx, by] = round[best] as Point;
    return py < by || (py === by && px < bx) ? i : best;
  }, 0);
  return {
    outline: [...round.slice(first), ...round.slice(0, first)],
    openings: openings
      .map(
        (rect): TakenOpening => ({
          ...rect,
          x: [snap(rect.x[0] - left), snap(rect.x[1] - left)],
          y: [snap(rect.y[0] - low), snap(rect.y[1] - low)],
        }),
      )
      .sort((a, b) => a.x[0] - b.x[0] || a.y[0] - b.y[0]),
  };
}
