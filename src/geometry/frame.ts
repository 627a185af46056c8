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
  /** Unit vector outward in plan; of a soffit, outward of the face that its recess opens from. */
  readonly outward: Point;
  /** Soffits alone: the height that z runs down from, while y runs into the building, against `outward` (mm). */
  readonly level?: number;
}

/** A point of a face frame in the building frame (mm). */
export function inBuilding(
  { origin, along, outward, level }: FaceFrame,
  { x, y, z }: { readonly x: number; readonly y: number; readonly z: number },
): readonly [x: number, y: number, z: number] {
  const out = level === undefined ? z : -y;
  return [
    origin[0] + along[0] * x + outward[0] * out,
    origin[1] + along[1] * x + outward[1] * out,
    level === undefined ? y : level - z,
  ];
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
