/**
 * The rod of upright boards, along a zone's width. A board ends on the clearance of an opening on both of its sides, so
 * over and under the opening a gap lies inside the segment at each end. At the mitre of an inside corner a board is wider
 * behind than at its face: where no stock is as wide, the rod runs on to its back edge, and the board is seen narrower.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { BoardCladding } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { RodResult } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import type { RodSegment } from "../rod/index.ts";
import { type GapsAsked, ownRod } from "./own-rod.ts";

export interface CornerBoards {
  /** What the boards at the zone's left and right end are wider behind than at their face (mm). */
  readonly behind: readonly [left: number, right: number];
  /** The widest board that can be had (mm); undefined where none is known. */
  readonly widest: number | undefined;
}

export interface UprightRod {
  readonly rod: RodResult;
  /** Whether the boards in the mitres of inside corners are seen narrower than the rod's widths, to be sawn from these. */
  readonly narrowed: boolean;
  readonly findings: readonly Finding[];
}

export function uprightRod(
  ground: ZoneGround,
  cladding: BoardCladding,
  asked: GapsAsked,
  corners: CornerBoards,
): UprightRod {
  const segments = segmentsOf(ground, Math.min(...cladding.widths));
  const usual = ownRod(ground, { cladding, asked, segments });
  const narrower = isTooWide(usual.rod, corners)
    ? ownRod(ground, { cladding, asked, segments: toBackEdges(segments, corners) })
    : undefined;
  const narrowed = narrower?.fits === true;
  const fits = usual.fits || narrowed;
  const rod = narrowed ? fromFaceEdges(narrower.rod, corners) : usual.rod;
  const gaps = rod.segments.map(({ gap }) => gap);
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  const spread = most - least;
  const boards = rod.segments.reduce((count, { courses }) => count + courses.length, 0);
  return {
    rod,
    narrowed,
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

function isTooWide({ segments }: RodResult, { behind, widest }: CornerBoards): boolean {
  const first = segments[0]?.courses[0];
  const last = segments.at(-1)?.courses.at(-1);
  const sawn = [
    first && behind[0] > 0 && first.width + behind[0],
    last && behind[1] > 0 && last.width + behind[1],
  ];
  return widest !== undefined && sawn.some((width) => width && width > widest);
}

function toBackEdges(segments: readonly RodSegment[], { behind }: CornerBoards): RodSegment[] {
  return segments.map((segment, i) => ({
    ...segment,
    from: i === 0 ? snap(segment.from - behind[0]) : segment.from,
    to: i === segments.length - 1 ? snap(segment.to + behind[1]) : segment.to,
  }));
}

function fromFaceEdges(rod: RodResult, { behind }: CornerBoards): RodResult {
  const last = rod.segments.length - 1;
  return {
    ...rod,
    segments: rod.segments.map((segment, i) => {
      const left = i === 0 ? behind[0] : 0;
      const right = i === last ? behind[1] : 0;
      const courses = segment.courses.map((course, k) => {
        const from = k === 0 ? snap(course.from + left) : course.from;
        const to = k === segment.courses.length - 1 ? snap(course.to - right) : course.to;
        return { ...course, from, to, width: snap(to - from) };
      });
      return { ...segment, from: snap(segment.from + left), to: snap(segment.to - right), courses };
    }),
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
