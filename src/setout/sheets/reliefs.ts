/**
 * Inner corners of sheets that cannot but be notched. A sharp inner corner starts a crack, so a round hole is drilled at
 * it first and the saw runs into the hole (common practice).
 */
import type { Point } from "../../geometry/point.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import type { Region } from "../../geometry/region.ts";
import type { Relief } from "../facade.ts";

/** Twice a saw cut's width and more, yet hidden by the joint (common practice). */
export const RELIEF_DIAMETER_MM = 8;

/** Of a piece: its outline runs counter-clockwise, its holes clockwise, so that the sheet is on the left of both. */
export function reliefsOf({ outline, holes }: Region): Relief[] {
  return [outline, ...holes].flatMap(innerCorners);
}

/** Every inner corner between a level and an upright edge. */
function innerCorners(outline: Polygon): Relief[] {
  return outline.flatMap((corner, i): Relief[] => {
    const before = outline[(i + outline.length - 1) % outline.length] as Point;
    const after = outline[(i + 1) % outline.length] as Point;
    const [inX, inY] = [corner[0] - before[0], corner[1] - before[1]];
    const [outX, outY] = [after[0] - corner[0], after[1] - corner[1]];
    const square = (inX === 0 && outY === 0) || (inY === 0 && outX === 0);
    const turnsRight = inX * outY - inY * outX < 0;
    return square && turnsRight ? [{ x: corner[0], y: corner[1], diameter: RELIEF_DIAMETER_MM }] : [];
  });
}
