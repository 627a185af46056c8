/** The view that shows a thing from outside its face, with enough round it to tell where it is. */
import type { Design } from "../../design.ts";
import { radiansToDegrees } from "../../units/angle.ts";
import type { Size } from "../drawing/camera.ts";
import { boxOf, faceOf, type Pick } from "../picks/pick.ts";
import { framing, type Orbit } from "./orbit.ts";
import { placed, standing } from "./placing.ts";

/** How far aside of a face's front and above it the eye stands (degrees); under a soffit it looks up. */
const ASIDE = 25;
const ABOVE = 15;
const BELOW = -35;
/** Pixels for a millimetre at most: a gap alone would tell nothing. */
const NEAREST = 0.25;

/** @returns undefined when the design does not have the thing */
export function lookingAt(design: Design, pick: Pick, size: Size): Orbit | undefined {
  const frame = faceOf(design, pick.face)?.frame;
  const box = boxOf(design, pick);
  if (!frame || !box) return undefined;
  const placing = standing(frame);
  const corners = box.x.flatMap((x) => box.y.map((y) => placed(placing, [x, y, 0])));
  const from = {
    roundDeg: radiansToDegrees(Math.atan2(frame.outward[0], -frame.outward[1])) + ASIDE,
    heightDeg: frame.level === undefined ? ABOVE : BELOW,
  };
  const orbit = framing(corners, from, { ...size, margin: Math.min(size.width, size.height) / 5 });
  return { ...orbit, k: Math.min(orbit.k, NEAREST) };
}
