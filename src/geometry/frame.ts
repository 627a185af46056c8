/**
 * Frames. Building frame: X to the right along the first face seen from outside, Y away from the viewer, Z up,
 * millimetres. Face frame: x to the right seen from outside, y up from the datum, z outward from the sheathing's outer
 * face. Right × up = towards the viewer, so the outward normal of a face that runs along (dx, dy) is (dy, −dx).
 */
import { distance, type Point } from "./point.ts";

export interface FaceFrame {
  /** Plan point of the face's left end seen from outside (building X, Y). */
  readonly origin: Point;
  /** Unit vector of the face's x axis in plan. */
  readonly along: Point;
  /** Unit vector outward in plan. */
  readonly outward: Point;
}

/** The frame of a face whose sheathing runs in plan from its left end to its right end. */
export function faceFrame({ from, to }: { from: Point; to: Point }): FaceFrame {
  const length = distance(from, to);
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  // Adding zero makes a plain zero of −0, which JSON does not know.
  return { origin: from, along, outward: [along[1], -along[0] + 0] };
}

/**
 * The turn in plan from a face to the one at its right end, in degrees: positive at an external corner, negative at an
 * internal one.
 */
export function turnDeg(left: FaceFrame, right: FaceFrame): number {
  const sine = left.along[0] * right.along[1] - left.along[1] * right.along[0];
  const cosine = left.along[0] * right.along[0] + left.along[1] * right.along[1];
  return (Math.atan2(sine, cosine) * 180) / Math.PI;
}
