/** Paths of straight segments in plan. */
import { distance, type Point } from "./point.ts";
import { segmentsCross, touches } from "./polygon.ts";

/**
 * The first segment of a path that crosses, touches or runs back over an earlier one, by its index; undefined where there
 * is none. A path whose last point is its first meets itself there without crossing.
 */
export function firstCrossing(path: readonly Point[]): number | undefined {
  const [first, last] = [path[0], path.at(-1)];
  const closed = first && last && first[0] === last[0] && first[1] === last[1];
  const segments = path.slice(1).map((to, i) => [path[i] as Point, to] as const);
  const index = segments.findIndex(([c, d], j) =>
    segments.slice(0, j).some(([a, b], i) => {
      if (segmentsCross(a, b, c, d)) return true;
      const follows = i === j - 1;
      const closes = closed === true && i === 0 && j === segments.length - 1;
      if (follows && runsBack(a, b, d)) return true;
      if (closes && runsBack(c, d, b)) return true;
      return (
        (!follows && (touches(a, b, c) || touches(c, d, b))) ||
        (!follows && !closes && touches(c, d, a)) ||
        (!closes && touches(a, b, d))
      );
    }),
  );
  return index < 0 ? undefined : index;
}

/** Whether going on from b to d runs back along the way from a to b. */
function runsBack(a: Point, b: Point, d: Point): boolean {
  const along = [b[0] - a[0], b[1] - a[1]] as const;
  const on = [d[0] - b[0], d[1] - b[1]] as const;
  const [across, back] = [along[0] * on[1] - along[1] * on[0], along[0] * on[0] + along[1] * on[1]];
  return distance(b, d) > 0 && across === 0 && back < 0;
}
