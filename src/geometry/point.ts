/** Points and vectors. Plane points are `[x, y]` in millimetres of the frame that their owner names. */

export type Point = readonly [x: number, y: number];

/** Twice the signed area of the triangle a, b, c; positive when c lies to the left of a → b (mm²). */
export function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Distance between two points (mm). */
export function distance(a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  // Lengths of buildings neither overflow nor vanish when squared, which is all that `Math.hypot` guards, slowly.
  return Math.sqrt(dx * dx + dy * dy);
}
