/** How low and how high a zone reaches within a column. */
import type { Interval } from "../../geometry/interval.ts";
import { sliceVertical } from "../../geometry/polygon.ts";
import { snap } from "../../units/length.ts";
import type { ZoneGround } from "../ground-plan.ts";

/** Just inside the column's edges, where a slice is certain to cut the region. */
const INSIDE_MM = 1 / 8000;

/** Finds columns' extents; many columns share an edge, so each edge is cut once. */
export function extentFinder(ground: ZoneGround): (x: Interval) => Interval {
  if (ground.rectangular) return () => ground.bounds.y;
  const cut = new Map<number, Interval>();
  const at = (x: number): Interval => {
    let found = cut.get(x);
    if (!found) {
      const ys = sliceVertical(ground.region, x).flat().map(snap);
      found = [Math.min(...ys), Math.max(...ys)];
      cut.set(x, found);
    }
    return found;
  };
  return (x) => {
    const [left, right] = [at(x[0] + INSIDE_MM), at(x[1] - INSIDE_MM)];
    let low = Math.min(left[0], right[0]);
    let high = Math.max(left[1], right[1]);
    for (const [px, py] of ground.region) {
      if (px < x[0] || px > x[1]) continue;
      low = Math.min(low, snap(py));
      high = Math.max(high, snap(py));
    }
    return [low, high];
  };
}
