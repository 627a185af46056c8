/** Where a course's butts would end boards in or beside a round duct: short grain there splits at the next screw. */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import type { ZoneGround } from "../ground-plan.ts";
import type { DuctChord } from "./butts.ts";

/**
 * The chords that ducts cut out of a course.
 * @param room what a board's end keeps from a duct: the batten that it bears on, whole (mm)
 */
export function ductChords(ground: ZoneGround, course: Interval, room: number): DuctChord[] {
  return ground.rounds
    .filter(({ bounds }) => overlaps(bounds.y, course))
    .map(({ of, centre, bounds }) => {
      const radius = (bounds.x[1] - bounds.x[0]) / 2;
      const off = Math.max(course[0] - centre[1], centre[1] - course[1], 0);
      const half = Math.sqrt(radius ** 2 - off ** 2);
      return { of, x: [centre[0] - half - room, centre[0] + half + room] as const };
    });
}
