/** Bounds of pieces, for checks that share no code with the program. */
import type { Pair } from "polygon-clipping";
import type { Polygon } from "../../src/geometry/polygon.ts";

/** Lengths nearer than this are told apart by arithmetic alone (mm). */
export const LENGTH_NOISE_MM = 0.01;

/** Left, right, bottom, top. */
export function boxOf(polygon: Polygon | readonly Pair[]): [number, number, number, number] {
  const xs = polygon.map(([x]) => x);
  const ys = polygon.map(([, y]) => y);
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
}

/** How much two stretches have in common; less than nothing where they are apart. */
export function depthShared(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
}
