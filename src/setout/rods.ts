/** Puts the rod solver to the zones that share courses, and turns its answer into courses and findings. */
import type { Choice, Finding } from "../findings/finding.ts";
import type { Project, RodSpec } from "../project/schema/project.ts";
import type { Message } from "../text/message.ts";
import type { RodResult, RodSegmentResult } from "./facade.ts";
import type { FaceMemo } from "./memo.ts";
import { missedLines, type RodOutcome, type RodProblem, solveRod, solveRodToDraw } from "./rod/index.ts";
import { fallbackRod, placedSegments } from "./storey/courses.ts";
import type { RodLine, RodZone } from "./storey/lines.ts";
import { mendsOf, mendsWithoutLook, problemWith } from "./storey/mends.ts";
import { impossibleFinding, ripFinding, unusableFinding } from "./storey/refused-findings.ts";
import { runnerUpOf } from "./storey/runner-up.ts";
import type { GapSeason } from "./storey/season.ts";
import {
  lookFindings,
  type Missed,
  missedFinding,
  type Solved,
  seasonFindings,
  solvedFinding,
} from "./storey/solved-findings.ts";
import { asSecondary, type RodSetting, settingOf } from "./storey/task.ts";
import { gapVaried } from "./storey/vary-gap.ts";

export type { RodZone } from "./storey/lines.ts";

export interface RodSetOut {
  readonly rod: RodResult;
  /** Heights of the lines that end segments. */
  readonly primary: ReadonlySet<number>;
  readonly findings: readonly Finding[];
  /** The next best rod and what it costs, for the courses' why. */
  readonly runnerUp?: Message;
}

/**
 * Solves one rod. The gap keeps to the band all year where the season is known and some rod does so; else to the band as given, and a finding
 * says what the year does to it. An even rod inside the band is worth more than a more even one that the weather takes out of it, so the
 * narrower band comes before every other merit.
 * @param toDraw the rod alone is wanted: nothing is offered to mend it, nor is it told what its rules cost
 */
export function setOutRod(
  project: Project,
  spec: RodSpec,
  zones: readonly RodZone[],
  gapBand: readonly [number, number],
  season: GapSeason | undefined,
  { memo, toDraw = false }: { readonly memo?: FaceMemo | undefined; readonly toDraw?: boolean },
): RodSetOut {
  const solver = toDraw ? solveRodToDraw : solveRod;
  const solve = (problem: RodProblem): RodOutcome => memo?.rod(problem, solver) ?? solver(problem);
  const setting = settingOf({ project, spec, zones, gapBand, season });
  const path = `/rods/${project.rods?.indexOf(spec) ?? 0}`;
  const inYear = problemWith(setting, "year");
  const yearly = inYear && solve(inYear);
  const outcome = yearly?.kind === "solved" ? yearly : solve(setting.problem);
  const choices =
    toDraw || outcome.kind === "unusable" || yearly?.kind === "solved"
      ? []
      : mends(setting, { yearly, outcome });
  const { segments, missed, findings } =
    outcome.kind === "solved"
      ? settled(setting, outcome, { path, choices, solve, inYear: yearly?.kind === "solved", toDraw })
      : shown(setting, outcome, { path, choices });
  const runnerUp = outcome.kind === "solved" ? runnerUpOf(outcome) : undefined;
  return {
    rod: {
      id: spec.id,
      zones: spec.zones.map(({ face, zone }) => ({ face, zone })),
      segments,
      missedLines: missed.map(({ line, offBy }) => ({ line, offBy })),
      ...(outcome.kind === "solved" && outcome.best.clearOf && { clearOf: outcome.best.clearOf.ducts }),
    },
    primary: new Set(setting.lines.borders.map(({ at }) => at)),
    findings: [...setting.faultyRips.map((rip) => ripFinding(setting, rip, path)), ...findings],
    ...(runnerUp && { runnerUp }),
  };
}

/** Changes that keep the band all year, or else such as keep it at fixing; two changes together where no single one will do. */
function mends(
  setting: RodSetting,
  { yearly, outcome }: { readonly yearly: RodOutcome | undefined; readonly outcome: RodOutcome },
): Choice[] {
  const inYear = yearly?.kind === "impossible" ? yearly.nearestChanges : undefined;
  const asGiven = outcome.kind === "impossible" ? outcome.nearestChanges : undefined;
  const ways = [
    () => inYear && mendsOf(setting, inYear, "year"),
    () => asGiven && mendsOf(setting, asGiven, "given"),
    () => inYear && mendsWithoutLook(setting, "year"),
    () => asGiven && mendsWithoutLook(setting, "given"),
  ];
  let untold: Choice[] = [];
  for (const way of ways) {
    const choices = way() ?? [];
    if (choices.some(({ edit }) => edit !== undefined)) return choices;
    if (untold.length === 0) untold = choices;
  }
  return untold;
}

interface Told {
  readonly segments: readonly RodSegmentResult[];
  readonly missed: readonly Missed[];
  readonly findings: readonly Finding[];
}

interface ToldWith {
  readonly path: string;
  readonly choices: readonly Choice[];
}

interface SettledWith extends ToldWith {
  readonly solve: (problem: RodProblem) => RodOutcome;
  /** The rod keeps to the band all year. */
  readonly inYear: boolean;
  /** Nothing is offered for lines that it misses. */
  readonly toDraw: boolean;
}

function settled(
  setting: RodSetting,
  outcome: Solved,
  { path, choices, solve, inYear, toDraw }: SettledWith,
): Told {
  const segments = placedSegments(setting.problem, outcome.best.segments);
  const missed = [
    ...outcome.best.missedLines.map(({ id, offBy }) => ({ line: id, offBy: offBy ?? 0, leftOut: false })),
    ...missedBeyondSearch(setting, segments),
  ];
  const lines = [...setting.lines.secondary, ...setting.lines.leftOut];
  const variedFor = ({ line }: Missed) => {
    const found = lines.find(({ id }) => id === line);
    return found && !toDraw ? gapVaried(setting, found, { inYear, solve }) : undefined;
  };
  return {
    segments,
    missed,
    findings: [
      solvedFinding(setting, segments, { path, examined: outcome.proof.examined }),
      ...seasonFindings(setting, segments, { path, choices }),
      ...missed.map((one) => missedFinding(one, path, variedFor(one))),
      ...lookFindings(outcome, setting),
    ],
  };
}

/** Of the lines that the search left out, those that the rod does not meet by luck. */
function missedBeyondSearch(setting: RodSetting, segments: readonly RodSegmentResult[]): Missed[] {
  const { problem, lines, task } = setting;
  const narrowestOfAll = Math.min(...problem.widths, ...(problem.ripped ?? []).map(({ width }) => width));
  const asked = lines.leftOut.map((line) =>
    asSecondary(line, { spec: task.spec, gapBand: task.gapBand, narrowestOfAll }),
  );
  const courses = segments.flatMap((segment) => segment.courses);
  return missedLines(asked, courses).map(({ id, offBy }) => ({ line: id, offBy: offBy ?? 0, leftOut: true }));
}

/** Nothing fits: the facade is still shown, and the rod fails. */
function shown(setting: RodSetting, outcome: Exclude<RodOutcome, Solved>, { path, choices }: ToldWith): Told {
  const all: readonly RodLine[] = [...setting.lines.secondary, ...setting.lines.leftOut];
  return {
    segments: placedSegments(setting.problem, fallbackRod(setting.problem)),
    missed: all.map(({ id }) => ({ line: id, offBy: 0, leftOut: false })),
    findings: [
      outcome.kind === "unusable"
        ? unusableFinding(setting, outcome, path)
        : impossibleFinding(setting, outcome, { path, choices }),
    ],
  };
}
