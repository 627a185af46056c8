/**
 * The rod of upright boards, along a zone's width. A board ends on the clearance of an opening on both of its sides, so
 * over and under the opening a gap lies inside the segment at each end. At the mitre of an inside corner a board is wider
 * behind than at its face: where no stock is as wide, the rod runs on to its back edge, and the board is seen narrower.
 */
import { type Finding, finding } from "../../findings/finding.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { RodResult } from "../facade.ts";
import { keepOutsOf, type ZoneGround } from "../ground-plan.ts";
import type { RodProblem, RodSegment } from "../rod/index.ts";
import { ductsAcross } from "../storey/ducts.ts";
import { type GapsAsked, ownRod } from "./own-rod.ts";
import { type OwnRodZone, ownRodRefused } from "./own-rod-mends.ts";
import { uprightSegments } from "./upright-segments.ts";

export interface CornerBoards {
  /** What the boards at the zone's left and right end are wider behind than at their face (mm). */
  readonly behind: readonly [left: number, right: number];
  /** The widest board that can be had (mm); undefined where none is known. */
  readonly widest: number | undefined;
}

export interface UprightAsked {
  readonly project: Project;
  readonly asked: GapsAsked;
  readonly corners: CornerBoards;
}

export interface UprightRod {
  readonly rod: RodResult;
  /** The rod passed over for the ducts beside its boards. */
  readonly runnerUp?: Message;
  /** Whether the boards in the mitres of inside corners are seen narrower than the rod's widths, to be sawn from these. */
  readonly narrowed: boolean;
  readonly findings: readonly Finding[];
}

export function uprightRod(
  ground: ZoneGround,
  cladding: BoardCladding,
  { project, asked, corners }: UprightAsked,
): UprightRod {
  const { segments } = uprightSegments(ground, Math.min(...cladding.widths));
  const { ducts } = ductsAcross(ground.rounds, {
    axis: "x",
    leastShare: project.limits.sliver.floor.value,
  });
  const own = { cladding, asked, ...(ducts && { ducts }) };
  const usual = ownRod(ground, { ...own, segments });
  const narrower = isTooWide(usual.rod, corners)
    ? ownRod(ground, { ...own, segments: toBackEdges(segments, corners) })
    : undefined;
  const narrowed = narrower?.fits === true;
  const fits = usual.fits || narrowed;
  const rod = narrowed ? fromFaceEdges(narrower.rod, corners) : usual.rod;
  const { runnerUp } = narrowed ? narrower : usual;
  return {
    rod,
    ...(runnerUp && { runnerUp }),
    narrowed,
    findings: [fits ? solved(ground, rod) : refused(usual.problem, { project, ground, cladding })],
  };
}

function solved({ face, zone }: ZoneGround, { segments }: RodResult): Finding {
  const gaps = segments.map(({ gap }) => gap);
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  const spread = most - least;
  const boards = segments.reduce((count, { courses }) => count + courses.length, 0);
  return finding({
    code: "S001",
    outcome: "pass",
    where: { face: face.id, zone: zone.id },
    says: message("setout.upright.solved", { boards, least, most, spread }),
    demand: Math.round(spread * 1000) / 1000,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

/** Which segment refuses, with the gaps nearest to the band, and what would mend it. */
function refused(
  problem: RodProblem,
  { project, ground, cladding }: Pick<OwnRodZone, "project" | "ground" | "cladding">,
): Finding {
  const { face, zone } = ground;
  const [least, most] = problem.gapBand;
  const own = new Set(ground.keepOuts.map(({ of }) => of));
  const told = ownRodRefused(problem, {
    project,
    ground,
    cladding,
    jambs: uprightSegments(ground, Math.min(...cladding.widths)).jambs,
    segmentsIn: (edited, { widths }) => {
      const changed = edited.faces.find(({ id }) => id === face.id);
      // A soffit has no opening, and is no face of the file.
      const keepOuts = changed ? keepOutsOf(edited, changed).filter(({ of }) => own.has(of)) : [];
      return uprightSegments({ bounds: ground.bounds, keepOuts }, Math.min(...widths)).segments;
    },
  });
  return finding({
    code: "S001",
    outcome: "fail",
    where: { face: face.id, zone: zone.id },
    says: told.nearest
      ? message("setout.upright.refused", { zone: zone.id, ...told.nearest, least, most })
      : message("setout.upright.impossible", { zone: zone.id, least, most }),
    hint: message("setout.upright.hint"),
    ...told.mends,
    source: { kind: "common practice" },
  });
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
