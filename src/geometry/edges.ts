/** Upright and level edges of polygons, and those that face each other over a gap. */
import type { Interval } from "./interval.ts";
import type { Point } from "./point.ts";
import type { Polygon } from "./polygon.ts";

export interface Edge {
  /** The coordinate that is the same all along it: `x` of an upright edge. */
  readonly axis: "x" | "y";
  readonly at: number;
  /** Along the other axis, lower end first. */
  readonly over: Interval;
  /** Which bound of the polygon it is there: material lies above a `low` one and below a `high` one. */
  readonly side: "low" | "high";
}

/** Of a counter-clockwise outline, or of a clockwise hole; slanted edges are left out. */
export function edgesOf(polygon: Polygon): Edge[] {
  return polygon.flatMap((from, i): Edge[] => {
    const to = polygon[(i + 1) % polygon.length] as Point;
    if (from[0] === to[0] && from[1] !== to[1]) {
      const side = to[1] > from[1] ? "high" : "low";
      return [{ axis: "x", at: from[0], over: ordered(from[1], to[1]), side }];
    }
    if (from[1] === to[1] && from[0] !== to[0]) {
      const side = to[0] > from[0] ? "low" : "high";
      return [{ axis: "y", at: from[1], over: ordered(from[0], to[0]), side }];
    }
    return [];
  });
}

function ordered(a: number, b: number): Interval {
  return a < b ? [a, b] : [b, a];
}

/** Corners of a polygon at which an edge begins or ends that is neither upright nor level. */
export function slantedCorners(polygon: Polygon): Point[] {
  return polygon.flatMap((from, i) => {
    const to = polygon[(i + 1) % polygon.length] as Point;
    return from[0] !== to[0] && from[1] !== to[1] ? [from, to] : [];
  });
}

export interface Facing<T> {
  /** The `high` edge under or left of the gap, and the `low` edge over or right of it. */
  readonly before: Edge & T;
  readonly after: Edge & T;
  /** Along the gap, what they have in common. */
  readonly over: Interval;
}

/** Pairs of edges that face each other no further apart than `reach` (mm), in the order of the edges before the gaps. */
export function facingEdges<T>(edges: readonly (Edge & T)[], reach: number): Facing<T>[] {
  return (["x", "y"] as const).flatMap((axis) => {
    const lows = edges
      .filter((edge) => edge.axis === axis && edge.side === "low")
      .sort((a, b) => a.at - b.at);
    return edges
      .filter((edge) => edge.axis === axis && edge.side === "high")
      .flatMap((before) => {
        const found: Facing<T>[] = [];
        for (let i = firstFrom(lows, before.at); i < lows.length; i++) {
          const after = lows[i] as Edge & T;
          if (after.at - before.at > reach) break;
          const over: Interval = [
            Math.max(before.over[0], after.over[0]),
            Math.min(before.over[1], after.over[1]),
          ];
          if (over[1] > over[0]) found.push({ before, after, over });
        }
        return found;
      });
  });
}

function firstFrom(edges: readonly Edge[], at: number): number {
  let [low, high] = [0, edges.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edges[middle] as Edge).at < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
