/**
 * The rod of a zone that shares courses with no other: upright boards along its width, a soffit from front to back. The
 * gap keeps to the band all year where the season is known and some rod does so; else to the band as given.
 */
import type { BoardCladding } from "../../project/schema/project.ts";
import type { Message } from "../../text/message.ts";
import type { RodResult } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";
import { bestRod, type RodProblem, type RodSegment } from "../rod/index.ts";
import { fallbackRod, placedSegments } from "../storey/courses.ts";
import { besideDucts } from "../storey/runner-up.ts";
import { bandThroughYear, type GapSeason } from "../storey/season.ts";

/** What is asked of the gaps of a zone's boards. */
export interface GapsAsked {
  readonly gapBand: readonly [least: number, most: number];
  readonly seasonal?: GapSeason | undefined;
}

/** What an own rod is made from. */
export interface OwnRodAsked {
  readonly cladding: BoardCladding;
  readonly asked: GapsAsked;
  readonly segments: readonly RodSegment[];
  readonly ducts?: RodProblem["ducts"];
}

export interface OwnRod {
  readonly problem: RodProblem;
  readonly rod: RodResult;
  /** Whether some rod fits; else the courses are for show only. */
  readonly fits: boolean;
  /** The rod passed over for the ducts beside its boards. */
  readonly runnerUp?: Message;
}

export function ownRod(
  { face, zone }: ZoneGround,
  { cladding, asked, segments, ducts }: OwnRodAsked,
): OwnRod {
  const problem: RodProblem = {
    segments,
    widths: cladding.widths,
    gapBand: asked.gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
    secondaryLines: [],
    ...(ducts && { ducts }),
  };
  const widest = Math.max(...cladding.widths);
  const yearly =
    asked.seasonal && bandThroughYear({ gapBand: asked.gapBand, widest, season: asked.seasonal });
  const solved = (yearly && bestRod({ ...problem, gapBand: yearly })) ?? bestRod(problem);
  return {
    problem,
    rod: {
      id: `${face.id} ${zone.id}`,
      zones: [{ face: face.id, zone: zone.id }],
      segments: placedSegments(problem, solved ? solved.segments : fallbackRod(problem)),
      missedLines: [],
      ...(solved?.clearOf && { clearOf: solved.clearOf.ducts }),
    },
    fits: solved !== undefined,
    ...(solved?.clearOf && { runnerUp: besideDucts(solved.clearOf) }),
  };
}
