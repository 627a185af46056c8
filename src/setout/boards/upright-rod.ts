/**
 * The rod of upright boards, along a zone's width. A board ends on the clearance of an opening on both of its sides, so
 * over and under the opening a gap lies inside the segment at each end.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { BoardCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import type { RodResult } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import type { RodSegment } from "../rod/index.ts";
import { type GapsAsked, ownRod } from "./own-rod.ts";

export function uprightRod(
  ground: ZoneGround,
  cladding: BoardCladding,
  asked: GapsAsked,
): { readonly rod: RodResult; readonly findings: readonly Finding[] } {
  const segments = segmentsOf(ground, Math.min(...cladding.widths));
  const { rod, fits } = ownRod(ground, { cladding, asked, segments });
  const gaps = rod.segments.map(({ gap }) => gap);
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  const spread = most - least;
  const boards = rod.segments.reduce((count, { courses }) => count + courses.length, 0);
  return {
    rod,
    findings: [
      finding({
        code: "S001",
        outcome: fits ? "pass" : "fail",
        where: { face: ground.face.id, zone: ground.zone.id },
        says: fits
          ? message("setout.upright.solved", { boards, least, most, spread })
          : message("setout.upright.impossible", {
              zone: ground.zone.id,
              least: asked.gapBand[0],
              most: asked.gapBand[1],
            }),
        ...(!fits && { hint: message("setout.upright.hint") }),
        demand: Math.round(spread * 1000) / 1000,
        unit: "mm",
        source: { kind: "common practice" },
      }),
    ],
  };
}

/** From the zone's left to its right, broken at jambs that leave room for a board on both sides. */
function segmentsOf(ground: ZoneGround, narrowest: number): RodSegment[] {
  const [left, right] = ground.bounds.x;
  const segments: RodSegment[] = [];
  let from = left;
  const add = (to: number, beside: boolean): void => {
    segments.push({ id: String(segments.length + 1), from, to, gapAtStart: !beside, gapAtEnd: !beside });
    from = to;
  };
  for (const { rect } of [...ground.keepOuts].sort((a, b) => a.rect.x[0] - b.rect.x[0])) {
    const [start, end] = rect.x;
    const roomBefore = start - from >= narrowest;
    const roomAfter = right - end >= narrowest;
    if (!roomBefore || !roomAfter || end - start < narrowest) continue;
    add(start, true);
    add(end, false);
  }
  add(right, true);
  return segments;
}
