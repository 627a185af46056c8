/** Puts the rod solver to the zones that share courses, and turns its answer into courses and findings. */
import { type Finding, finding } from "../findings/finding.ts";
import type { BoardCladding, Project, RodSpec } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { snap } from "../units/length.ts";
import type { RodCourse, RodResult, RodSegmentResult } from "./facade.ts";
import type { KeepOut, ZoneGround } from "./ground-plan.ts";
import { claddingOf } from "./resolve.ts";
import {
  type RodOutcome,
  type RodProblem,
  type SecondaryLine,
  type SegmentSolution,
  solveRod,
} from "./rod/index.ts";

export interface RodZone {
  readonly ground: ZoneGround;
  /** Every opening of the face, whichever zone it lies in: lines run through both claddings. */
  readonly faceKeepOuts: readonly KeepOut[];
}

interface Line {
  readonly id: string;
  readonly at: number;
  readonly kind: "sill" | "head";
}

/** Solves one rod. The gap band comes from the demands, so that it already holds the boards' movement. */
export function setOutRod(
  project: Project,
  spec: RodSpec,
  zones: readonly RodZone[],
  gapBand: readonly [number, number],
): { readonly rod: RodResult; readonly primary: ReadonlySet<number>; readonly findings: readonly Finding[] } {
  const cladding = claddingOf(project, (zones[0] as RodZone).ground.zone) as BoardCladding;
  const base = Math.min(...zones.map(({ ground }) => ground.bounds.y[0]));
  const top = Math.max(...zones.map(({ ground }) => ground.bounds.y[1]));
  const narrowest = Math.min(...cladding.widths);
  const { borders, secondary } = sortLines({ spec, zones, base, top, narrowest });
  const problem: RodProblem = {
    segments: borders.slice(1).map((to, i) => ({
      id: String(i + 1),
      from: borders[i] as number,
      to,
      gapAtStart: i > 0,
      gapAtEnd: false,
    })),
    widths: cladding.widths,
    gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
    secondaryLines: secondary.map((line) => asSecondary(line, spec.lineTolerance, gapBand[0])),
  };
  const outcome = solveRod(problem);
  const { segments, missed, findings } = settle({ project, spec, cladding, problem, outcome, secondary });
  return {
    rod: {
      id: spec.id,
      zones: spec.zones.map(({ face, zone }) => ({ face, zone })),
      segments,
      missedLines: missed,
    },
    primary: new Set(borders),
    findings,
  };
}

/**
 * Lines of the leading faces end segments; the others are met by order. A leading line nearer to its neighbour than the
 * narrowest board cannot hold a course and is met by order too.
 */
function sortLines(at: {
  spec: RodSpec;
  zones: readonly RodZone[];
  base: number;
  top: number;
  narrowest: number;
}): { borders: number[]; secondary: Line[] } {
  const leading: Line[] = [];
  const following: Line[] = [];
  for (const { ground, faceKeepOuts } of at.zones) {
    const leads = at.spec.leads.includes(ground.face.id);
    for (const { of, sillLine, headLine, rect } of faceKeepOuts) {
      const touches = rect.x[0] < ground.bounds.x[1] && rect.x[1] > ground.bounds.x[0];
      if (!leads && !touches) continue;
      const list = leads ? leading : following;
      if (sillLine !== undefined)
        list.push({ id: `${ground.face.id} sill ${of}`, at: sillLine, kind: "sill" });
      list.push({ id: `${ground.face.id} head ${of}`, at: headLine, kind: "head" });
    }
  }
  const inside = ({ at: y }: Line): boolean => y > at.base && y < at.top;
  const borders = [at.base];
  const secondary: Line[] = [];
  for (const line of leading.filter(inside).sort((a, b) => a.at - b.at)) {
    const last = borders.at(-1) as number;
    if (line.at === last) continue;
    if (line.at - last < at.narrowest || at.top - line.at < at.narrowest) secondary.push(line);
    else borders.push(line.at);
  }
  borders.push(at.top);
  for (const line of following.filter(inside)) {
    if (!borders.includes(line.at) && !secondary.some((other) => other.at === line.at)) secondary.push(line);
  }
  return { borders, secondary: secondary.sort((a, b) => a.at - b.at) };
}

/**
 * A course must end at or a little under the line, so that the joint above it takes the line in. Over a head the line
 * may lie anywhere in that joint; under a sill the course should end close, or the gap under the sill grows.
 */
function asSecondary(line: Line, tolerance: number, leastGap: number): SecondaryLine {
  return {
    id: line.id,
    at: line.at,
    edge: "end-of-board",
    tolerance: line.kind === "head" ? leastGap : Math.min(tolerance, leastGap),
  };
}

interface Settled {
  readonly segments: RodSegmentResult[];
  readonly missed: { line: string; offBy: number }[];
  readonly findings: Finding[];
}

function settle(at: {
  project: Project;
  spec: RodSpec;
  cladding: BoardCladding;
  problem: RodProblem;
  outcome: RodOutcome;
  secondary: readonly Line[];
}): Settled {
  const { outcome, spec, cladding, problem } = at;
  const rodPath = `/rods/${at.project.rods?.indexOf(spec) ?? 0}`;
  const claddingPath = `/claddings/${at.project.claddings.indexOf(cladding)}`;
  if (outcome.kind === "solved") {
    const missed = outcome.best.missedLines.map(({ id, offBy }) => ({ line: id, offBy: offBy ?? 0 }));
    const segments = placed(problem, outcome.best.segments);
    return {
      segments,
      missed,
      findings: [
        solvedFinding(spec, segments, rodPath, outcome.proof.examined),
        ...missed.map(({ line, offBy }) => missedFinding(line, offBy, rodPath)),
        ...lookFindings(outcome, cladding, claddingPath),
      ],
    };
  }
  // Nothing fits: the facade is still shown, with the least wider band, and the rod fails.
  const refused = outcome.kind === "impossible" ? outcome : undefined;
  const fallback = fallbackRod(problem);
  return {
    segments: placed(problem, fallback),
    missed: at.secondary.map(({ id }) => ({ line: id, offBy: 0 })),
    findings: [impossibleFinding(at.spec, refused, rodPath)],
  };
}

/** Segment solutions as courses, numbered 101, 102 … in the first segment, 201 … in the second. */
function placed(problem: RodProblem, segments: readonly SegmentSolution[]): RodSegmentResult[] {
  return segments.map((solution, i): RodSegmentResult => {
    const segment = problem.segments[i];
    return {
      segment: solution.id,
      from: segment?.from ?? 0,
      to: segment?.to ?? 0,
      endGaps: { start: segment?.gapAtStart ?? false, end: segment?.gapAtEnd ?? false },
      gap: solution.gap ?? 0,
      courses: solution.courses.map(
        ({ from, to, width }, k): RodCourse => ({
          number: (i + 1) * COURSES_PER_SEGMENT + k + 1,
          from,
          to,
          width,
        }),
      ),
    };
  });
}

const COURSES_PER_SEGMENT = 100;

/**
 * A rod for showing when none is possible: each segment alone takes the widest board as often as it goes, at the gap
 * nearest to the band.
 */
function fallbackRod(problem: RodProblem): SegmentSolution[] {
  const [least, most] = problem.gapBand;
  const width = Math.max(...problem.widths);
  return problem.segments.map((segment): SegmentSolution => {
    const length = segment.to - segment.from;
    const ends = (segment.gapAtStart ? 1 : 0) + (segment.gapAtEnd ? 1 : 0);
    const middle = (least + most) / 2;
    const boards = Math.max(1, Math.round((length + middle * (1 - ends)) / (width + middle)));
    const gaps = boards - 1 + ends;
    // One board that overfills its segment is ripped to it.
    const used = gaps === 0 || length < boards * width ? (length - gaps * least) / boards : width;
    const gap = gaps === 0 ? 0 : (length - boards * used) / gaps;
    const first = segment.from + (segment.gapAtStart ? gap : 0);
    const courses = Array.from({ length: boards }, (_, i) => {
      const from = snap(first + i * (used + gap));
      const to = i === boards - 1 && !segment.gapAtEnd ? segment.to : snap(first + i * (used + gap) + used);
      return { from, to, width: snap(to - from) };
    });
    return { id: segment.id, courses, gap, counts: [{ width: used, count: boards }] };
  });
}

function solvedFinding(
  spec: RodSpec,
  segments: readonly RodSegmentResult[],
  path: string,
  examined: number,
): Finding {
  const gaps = segments.map(({ gap }) => gap);
  const spread = Math.max(...gaps) - Math.min(...gaps);
  const first = segments[0] as RodSegmentResult;
  const k = first.courses.length - 1 + (first.endGaps.start ? 1 : 0) + (first.endGaps.end ? 1 : 0);
  const sum = snap(first.courses.reduce((total, { width }) => total + width, 0));
  const length = snap(first.to - first.from);
  return finding({
    code: "S001",
    outcome: spread <= SPREAD_TOLERABLE_MM + 1e-6 ? "pass" : "attention",
    where: { path },
    says: message("setout.rod.solved", {
      rod: spec.id,
      courses: segments.reduce((count, { courses }) => count + courses.length, 0),
      least: Math.min(...gaps),
      most: Math.max(...gaps),
      spread,
      examined,
    }),
    demand: round(spread),
    limit: SPREAD_TOLERABLE_MM,
    unit: "mm",
    ratio: round(spread / SPREAD_TOLERABLE_MM),
    working: {
      formula: "g = (L − Σw) / k",
      inputs: [
        { symbol: "L", meaning: message("setout.rod.length"), value: length, unit: "mm", basis: "derived" },
        { symbol: "Σw", meaning: message("setout.rod.widths"), value: sum, unit: "mm", basis: "given" },
        { symbol: "k", meaning: message("setout.rod.gaps"), value: k, unit: "1", basis: "derived" },
      ],
      substituted: `(${length} − ${sum}) / ${k} = ${first.gap.toFixed(2)}`,
    },
    source: { kind: "common practice" },
  });
}

/** Unseen up to 1 mm, tolerable up to 2 mm (common practice). */
const SPREAD_TOLERABLE_MM = 2;

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function missedFinding(line: string, offBy: number, path: string): Finding {
  return finding({
    code: "S002",
    outcome: "attention",
    where: { path },
    says: message("setout.rod.missed", { line, offBy }),
    hint: message("setout.rod.missed.hint"),
    demand: round(offBy),
    limit: 0,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

/** What the look rule costs in evenness of the gap, where it costs anything. */
function lookFindings(
  outcome: Extract<RodOutcome, { kind: "solved" }>,
  cladding: BoardCladding,
  path: string,
): Finding[] {
  const cost = outcome.ruleCosts.find(({ rule }) => rule === "look");
  const saved = cost?.saves?.gapSpread ?? 0;
  if (!cost || saved <= 0.05) return [];
  return [
    finding({
      code: "S003",
      outcome: "attention",
      where: { path: `${path}/maxEqualWidthsTouching` },
      says: message("setout.rod.look-costs", {
        most: cladding.maxEqualWidthsTouching ?? 0,
        with: outcome.best.gapSpread,
        without: cost.withoutIt.merit.gapSpread,
      }),
      demand: round(outcome.best.gapSpread),
      limit: round(cost.withoutIt.merit.gapSpread),
      unit: "mm",
      source: { kind: "common practice" },
    }),
  ];
}

function impossibleFinding(
  spec: RodSpec,
  outcome: Extract<RodOutcome, { kind: "impossible" }> | undefined,
  path: string,
): Finding {
  const refused = outcome?.segments[0];
  const change = outcome?.nearestChanges[0];
  return finding({
    code: "S001",
    outcome: "fail",
    where: { path },
    says:
      refused?.nearestBelow && refused.nearestAbove
        ? message("setout.rod.impossible", {
            rod: spec.id,
            segment: refused.id,
            below: refused.nearestBelow.gap,
            above: refused.nearestAbove.gap,
          })
        : message("setout.rod.impossible-plain", { rod: spec.id }),
    ...(change && { hint: changeHint(change) }),
    source: { kind: "common practice" },
  });
}

type Change = Extract<RodOutcome, { kind: "impossible" }>["nearestChanges"][number];

function changeHint(change: Change): ReturnType<typeof message> {
  switch (change.kind) {
    case "move-line":
      return message("setout.rod.move-line", { from: change.from, to: change.to, by: change.by });
    case "move-lines":
      return message("setout.rod.move-lines", { lines: change.moves.length, sum: change.sum });
    case "widen-band":
      return message("setout.rod.widen-band", { least: change.gapBand[0], most: change.gapBand[1] });
    case "rip":
      return message("setout.rod.rip", {
        width: change.boards[0]?.width ?? 0,
        segment: change.boards[0]?.segment ?? "",
      });
    case "ease-look":
      return message("setout.rod.ease-look", { most: change.maxEqualTouching });
  }
}
