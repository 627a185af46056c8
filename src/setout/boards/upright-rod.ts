/**
 * The rod of upright boards, along a zone's width. A board ends on the clearance of an opening on both of its sides, so
 * over and under the opening a gap lies inside the segment at each end.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { BoardCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import type { RodResult } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import { bestRod, type RodProblem, type RodSegment } from "../rod/index.ts";
import { fallbackRod, placedSegments } from "../storey/courses.ts";

export function uprightRod(
  ground: ZoneGround,
  cladding: BoardCladding,
  gapBand: readonly [number, number],
): { readonly rod: RodResult; readonly findings: readonly Finding[] } {
  const problem: RodProblem = {
    segments: segmentsOf(ground, Math.min(...cladding.widths)),
    widths: cladding.widths,
    gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
    secondaryLines: [],
  };
  const solved = bestRod(problem);
  const segments = placedSegments(problem, solved ? solved.segments : fallbackRod(problem));
  const where = { face: ground.face.id, zone: ground.zone.id };
  const gaps = segments.map(({ gap }) => gap);
  const boards = segments.reduce((count, { courses }) => count + courses.length, 0);
  const spread = Math.max(...gaps) - Math.min(...gaps);
  return {
    rod: {
      id: `${ground.face.id} ${ground.zone.id}`,
      zones: [{ face: ground.face.id, zone: ground.zone.id }],
      segments,
      missedLines: [],
    },
    findings: [
      finding({
        code: "S001",
        outcome: solved ? "pass" : "fail",
        where,
        says: solved
          ? message("setout.upright.solved", {
              boards,
              least: Math.min(...gaps),
              most: Math.max(...gaps),
              spread,
            })
          : message("setout.upright.impossible", {
              zone: ground.zone.id,
              least: gapBand[0],
              most: gapBand[1],
            }),
        ...(!solved && { hint: message("setout.upright.hint") }),
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
