/** Where a piece's mark can stand clear of its fixings. */

import type { Point } from "../../geometry/point.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import { polygonBounds, rectInsidePolygon } from "../../geometry/polygon.ts";
import { type Rect, rectsOverlap } from "../../geometry/rect.ts";
import { textWidth } from "../text-widths.ts";

/** How many steps a mark may stand from the middle, each way. */
const MOST_STEPS = 16;

export interface MarkSpot {
  readonly at: Point;
  readonly angleDeg: 0 | 90;
}

/**
 * The spot for a mark nearest the middle of a piece, lying first, upright where only that fits; undefined where neither
 * does.
 * @param height of capitals, millimetres on paper
 * @param dotRadius of the fixings as drawn, model mm
 * @param clear space over and under the mark, in heights of capitals
 */
export function markSpot({
  mark,
  outline,
  holes,
  dots,
  dotRadius,
  height,
  clear,
  scale,
  weight,
}: {
  mark: string;
  outline: Polygon;
  holes: readonly Polygon[];
  dots: readonly Point[];
  dotRadius: number;
  height: number;
  clear: number;
  scale: number;
  weight: "regular" | "bold";
}): MarkSpot | undefined {
  const margin = (height * clear) / scale;
  const long = textWidth({ text: mark, height, weight }) / scale + 2 * margin;
  const high = height / scale + 2 * margin;
  const box = polygonBounds(outline);
  const middle: Point = [(box.x[0] + box.x[1]) / 2, (box.y[0] + box.y[1]) / 2];
  for (const angleDeg of [0, 90] as const) {
    const [w, h] = angleDeg === 0 ? [long, high] : [high, long];
    if (w > box.x[1] - box.x[0] || h > box.y[1] - box.y[0]) continue;
    const fits = (at: Point): boolean => {
      const rect: Rect = {
        x: [at[0] - w / 2, at[0] + w / 2],
        y: [at[1] - h / 2, at[1] + h / 2],
      };
      return (
        !dots.some(
          ([x, y]) => Math.abs(x - at[0]) < w / 2 + dotRadius && Math.abs(y - at[1]) < h / 2 + dotRadius,
        ) &&
        !holes.some((hole) => rectsOverlap(rect, polygonBounds(hole))) &&
        rectInsidePolygon(rect, outline)
      );
    };
    // Most marks find room in the middle, and nearly all at once: the fine search is for crowded pieces.
    if (fits(middle)) return { at: middle, angleDeg };
    for (const part of [2, 8]) {
      const xs = places({ from: box.x[0] + w / 2, to: box.x[1] - w / 2, step: w / part, middle: middle[0] });
      const ys = places({ from: box.y[0] + h / 2, to: box.y[1] - h / 2, step: h / part, middle: middle[1] });
      const spots = xs.flatMap((x) => ys.map((y): Spot => ({ at: [x, y], away: away([x, y], middle) })));
      spots.sort((a, b) => a.away - b.away || b.at[1] - a.at[1] || a.at[0] - b.at[0]);
      const found = spots.find(({ at }) => fits(at));
      if (found) return { at: found.at, angleDeg };
    }
  }
  return undefined;
}

interface Spot {
  readonly at: Point;
  /** From the piece's middle, mm. */
  readonly away: number;
}

function away([x, y]: Point, [mx, my]: Point): number {
  return Math.hypot(x - mx, y - my);
}

/** Places outward from the middle within the reach, so many to each side at most. */
function places({
  from,
  to,
  step,
  middle,
}: {
  from: number;
  to: number;
  step: number;
  middle: number;
}): number[] {
  const found = [Math.min(to, Math.max(from, middle))];
  for (let k = 1; k <= MOST_STEPS; k++) {
    for (const at of [middle + k * step, middle - k * step]) if (at >= from && at <= to) found.push(at);
  }
  return found;
}
