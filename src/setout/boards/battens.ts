/** Where the boards of a zone want battens: on studs, at the zone's ends, beside openings and behind butts. */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import type { BattenWish } from "../draft.ts";
import type { BoardZone } from "./zone.ts";

export function boardBattenWishes(zone: BoardZone): BattenWish[] {
  const { ground, battenWidth, ends } = zone;
  const [left, right] = ground.bounds.x;
  const wishes: BattenWish[] = [];
  // At an outside corner the cladding passes the sheathing; its last batten stays on the wall.
  const wallLeft = ends.left.kind === "external" ? Math.max(left, 0) : left;
  const wallRight = ends.right.kind === "external" ? Math.min(right, wallEnd(zone)) : right;
  wishes.push({ x: [wallLeft, snap(wallLeft + battenWidth)], reason: "end" });
  wishes.push({ x: [snap(wallRight - battenWidth), wallRight], reason: "end" });
  for (const { rect } of ground.keepOuts) {
    if (rect.x[0] > left) wishes.push({ x: [snap(rect.x[0] - battenWidth), rect.x[0]], reason: "jamb" });
    if (rect.x[1] < right) wishes.push({ x: [rect.x[1], snap(rect.x[1] + battenWidth)], reason: "jamb" });
  }
  for (const { bounds } of ground.rounds) {
    wishes.push(besideRound(bounds.x[0], -battenWidth, bounds.y));
    wishes.push(besideRound(bounds.x[1], battenWidth, bounds.y));
  }
  for (const centre of zone.studs) {
    wishes.push({ x: [snap(centre - battenWidth / 2), snap(centre + battenWidth / 2)], reason: "stud" });
  }
  return wishes;
}

/** How far the sheathing goes: the ends of the first and last stud. */
function wallEnd(zone: BoardZone): number {
  return Math.max(...zone.ground.face.outline.map(([x]) => x));
}

/** Past the courses that a duct may cut through on each side of it. */
const PAST_ROUND_MM = 150;

function besideRound(edge: number, width: number, y: Interval): BattenWish {
  const x: Interval = width < 0 ? [snap(edge + width), edge] : [edge, snap(edge + width)];
  return { x, reason: "short", y: [snap(y[0] - PAST_ROUND_MM), snap(y[1] + PAST_ROUND_MM)] };
}

/** Two battens side by side behind each line of butts, so that each board end has its own bearing. */
export function buttStrips(zone: BoardZone, butts: readonly number[]): BattenWish[] {
  return [...butts]
    .sort((a, b) => a - b)
    .flatMap((at): BattenWish[] => [
      { x: [snap(at - zone.battenWidth), at], reason: "butt" },
      { x: [at, snap(at + zone.battenWidth)], reason: "butt" },
    ]);
}
