/** A rod of the project file as a problem for the solver. */
import type { BoardCladding, Project, RodSpec } from "../../project/schema/project.ts";
import { sameLength, snap } from "../../units/length.ts";
import { claddingOf } from "../resolve.ts";
import type { RippedBoard, RodProblem, SecondaryLine } from "../rod/index.ts";
import { ductsAcross } from "./ducts.ts";
import { linesOf, type RodLine, type RodLines, type RodZone } from "./lines.ts";
import { bandThroughYear, type GapSeason } from "./season.ts";

export interface RodTask {
  readonly project: Project;
  readonly spec: RodSpec;
  readonly zones: readonly RodZone[];
  /** Least and greatest gap, in mm. */
  readonly gapBand: readonly [least: number, most: number];
  /** Absent where the project lacks what it takes to know. */
  readonly season: GapSeason | undefined;
}

/** A ripped board of the file that cannot be laid, by its place in the list. */
export interface FaultyRip {
  readonly index: number;
  readonly why: "no-segment" | "segment-twice" | "regular-width";
}

export interface RodSetting {
  readonly task: RodTask;
  readonly cladding: BoardCladding;
  readonly lines: RodLines;
  /** With the band as given. */
  readonly problem: RodProblem;
  /** The band in which a gap stays within the given one all year; absent where it is not known or there is none. */
  readonly yearBand: readonly [least: number, most: number] | undefined;
  readonly faultyRips: readonly FaultyRip[];
}

export function settingOf(task: RodTask): RodSetting {
  const { project, spec, zones, gapBand, season } = task;
  const [first] = zones;
  if (first === undefined) throw new Error(`rod ${spec.id} has no zones`);
  const cladding = claddingOf(project, first.ground.zone) as BoardCladding;
  const narrowest = Math.min(...cladding.widths);
  const lines = linesOf({ spec, zones, narrowest });
  const { ripped, faultyRips } = ripsOf(spec, cladding, lines.borders.length - 1);
  const narrowestOfAll = Math.min(narrowest, ...ripped.map(({ width }) => width));
  const problem: RodProblem = {
    segments: lines.borders.slice(1).map(({ at: to }, i) => ({
      id: String(i + 1),
      from: lines.borders[i]?.at ?? to,
      to,
      gapAtStart: i > 0,
      gapAtEnd: false,
    })),
    widths: cladding.widths,
    gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
    secondaryLines: lines.secondary.map((line) => asSecondary(line, { spec, gapBand, narrowestOfAll })),
    ...ductsAcross(
      zones.flatMap(({ ground }) => ground.rounds),
      { axis: "y", leastShare: project.limits.sliver.floor.value },
    ),
    ...(ripped.length === 0 ? {} : { ripped }),
  };
  const widest = Math.max(...cladding.widths, ...ripped.map(({ width }) => width));
  return {
    task,
    cladding,
    lines,
    problem,
    yearBand: season && bandThroughYear({ gapBand, widest, season }),
    faultyRips,
  };
}

/**
 * A course must end at or a little under the line, so that the joint above it takes the line in. Over a head the line
 * may lie anywhere in that joint; under a sill the course should end close, or the gap under the sill grows.
 */
export function asSecondary(
  line: RodLine,
  by: {
    readonly spec: RodSpec;
    readonly gapBand: readonly [least: number, most: number];
    readonly narrowestOfAll: number;
  },
): SecondaryLine {
  const [leastGap] = by.gapBand;
  const wished = line.kind === "head" ? leastGap : Math.min(by.spec.lineTolerance, leastGap);
  return {
    id: line.id,
    at: line.at,
    edge: "end-of-board",
    // With half the narrowest board no two courses can claim one line.
    tolerance: Math.min(wished, snap(by.narrowestOfAll / 2)),
  };
}

function ripsOf(
  spec: RodSpec,
  cladding: BoardCladding,
  segments: number,
): { readonly ripped: readonly RippedBoard[]; readonly faultyRips: readonly FaultyRip[] } {
  const ripped: RippedBoard[] = [];
  const faultyRips: FaultyRip[] = [];
  (spec.rips ?? []).forEach(({ segment, width }, index) => {
    const id = String(segment);
    if (segment > segments) faultyRips.push({ index, why: "no-segment" });
    else if (ripped.some((board) => board.segment === id)) faultyRips.push({ index, why: "segment-twice" });
    else if (cladding.widths.some((regular) => sameLength(regular, width)))
      faultyRips.push({ index, why: "regular-width" });
    else ripped.push({ segment: id, width });
  });
  return { ripped, faultyRips };
}
