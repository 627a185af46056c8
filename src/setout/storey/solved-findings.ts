/** What is said of a rod that is solved: its gaps, the lines it misses, what the look and the seasons cost. */
import { type Choice, type Finding, finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { RodSegmentResult } from "../facade.ts";
import type { RodOutcome } from "../rod/index.ts";
import { gapSwing } from "./season.ts";
import type { RodSetting } from "./task.ts";

export type Solved = Extract<RodOutcome, { kind: "solved" }>;

/** Unseen up to 1 mm, tolerable up to 2 mm (common practice). */
const SPREAD_TOLERABLE_MM = 2;

/** A cost in evenness below this is not worth a word, in mm. */
const WORTH_SAYING_MM = 0.05;

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

export function solvedFinding(
  setting: RodSetting,
  segments: readonly RodSegmentResult[],
  at: { readonly path: string; readonly examined: number },
): Finding {
  const gaps = segments.map(({ gap }) => gap);
  const spread = Math.max(...gaps) - Math.min(...gaps);
  const [first] = segments;
  const courses = first?.courses ?? [];
  const k = courses.length - 1 + (first?.endGaps.start ? 1 : 0) + (first?.endGaps.end ? 1 : 0);
  const sum = snap(courses.reduce((total, { width }) => total + width, 0));
  const length = snap((first?.to ?? 0) - (first?.from ?? 0));
  return finding({
    code: "S001",
    outcome: spread <= SPREAD_TOLERABLE_MM + 1e-6 ? "pass" : "attention",
    where: { path: at.path },
    says: message("setout.rod.solved", {
      rod: setting.task.spec.id,
      courses: segments.reduce((count, segment) => count + segment.courses.length, 0),
      least: Math.min(...gaps),
      most: Math.max(...gaps),
      spread,
      examined: at.examined,
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
      substituted: `(${length} − ${sum}) / ${k} = ${(first?.gap ?? 0).toFixed(2)}`,
    },
    source: { kind: "common practice" },
  });
}

/** Where the gap leaves the band in some month because no rod keeps to it all year; nothing where it does not. */
export function seasonFindings(
  setting: RodSetting,
  segments: readonly RodSegmentResult[],
  at: { readonly path: string; readonly choices: readonly Choice[] },
): Finding[] {
  const { season, gapBand, spec } = setting.task;
  if (season === undefined) return [];
  const widest = Math.max(...segments.flatMap(({ courses }) => courses.map(({ width }) => width)));
  const gaps = segments
    .filter(({ courses, endGaps }) => courses.length > 1 || endGaps.start)
    .map(({ gap }) => gap);
  if (gaps.length === 0) return [];
  const { closes, opens } = gapSwing(season, widest);
  const [narrowest, broadest] = [Math.min(...gaps), Math.max(...gaps)];
  const [least, most] = [narrowest + closes, broadest + opens];
  const under = gapBand[0] - least;
  const over = most - gapBand[1];
  if (under <= 0 && over <= 0) return [];
  const isUnder = under > over;
  const [choice] = at.choices;
  const wetter = (perMm: number): string => `${perMm < 0 ? "−" : "+"} ${Math.abs(perMm * widest).toFixed(2)}`;
  return [
    finding({
      code: "S001",
      outcome: "attention",
      where: { path: at.path },
      says: message("setout.rod.season", {
        rod: spec.id,
        least: gapBand[0],
        most: gapBand[1],
        width: widest,
        narrowest: least,
        broadest: most,
      }),
      ...(choice && { hint: choice.says }),
      ...(choice?.edit && { edit: choice.edit }),
      ...(at.choices.length > 0 && { choices: at.choices }),
      demand: round(isUnder ? least : most),
      limit: isUnder ? gapBand[0] : gapBand[1],
      unit: "mm",
      ratio: round(isUnder ? gapBand[0] / Math.max(least, 1e-3) : most / gapBand[1]),
      working: {
        formula: "g_w = g − b·r_w; g_d = g' + b·r_d",
        inputs: [
          {
            symbol: "g",
            meaning: message("setout.rod.gap-least"),
            value: round(narrowest),
            unit: "mm",
            basis: "derived",
          },
          {
            symbol: "g'",
            meaning: message("setout.rod.gap-most"),
            value: round(broadest),
            unit: "mm",
            basis: "derived",
          },
          { symbol: "b", meaning: message("setout.rod.widest"), value: widest, unit: "mm", basis: "given" },
          {
            symbol: "r_w",
            meaning: message("setout.rod.wettest"),
            value: -season.wettestMm,
            unit: "1",
            basis: season.basis,
          },
          {
            symbol: "r_d",
            meaning: message("setout.rod.driest"),
            value: season.driestMm,
            unit: "1",
            basis: season.basis,
          },
        ],
        substituted: `${narrowest.toFixed(2)} ${wetter(season.wettestMm)} = ${least.toFixed(2)}; ${broadest.toFixed(2)} ${wetter(season.driestMm)} = ${most.toFixed(2)}`,
      },
      source: {
        kind: "document",
        document: "Wood Handbook, Forest Products Laboratory, FPL-GTR-282 (2021)",
        clause: "Equations 4-5 and 4-9",
      },
    }),
  ];
}

export interface Missed {
  readonly line: string;
  readonly offBy: number;
  /** Whether the search left the line out because there were too many. */
  readonly leftOut: boolean;
}

export function missedFinding(
  { line, offBy, leftOut }: Missed,
  path: string,
  varied: Choice | undefined,
): Finding {
  return finding({
    code: "S002",
    outcome: "attention",
    where: { path },
    says: message(leftOut ? "setout.rod.missed.left-out" : "setout.rod.missed", { line, offBy }),
    hint: varied?.says ?? message("setout.rod.missed.hint"),
    ...(varied?.edit && { edit: varied.edit, choices: [varied] }),
    demand: round(offBy),
    limit: 0,
    unit: "mm",
    source: { kind: "common practice" },
  });
}

/** What the look rule costs in evenness of the gap, where it costs anything. */
export function lookFindings(outcome: Solved, { task, cladding }: RodSetting): Finding[] {
  const cost = outcome.ruleCosts.find(({ rule }) => rule === "look");
  const saved = cost?.saves?.gapSpread ?? 0;
  if (!cost || saved <= WORTH_SAYING_MM) return [];
  return [
    finding({
      code: "S003",
      outcome: "attention",
      where: { path: `/claddings/${task.project.claddings.indexOf(cladding)}/maxEqualWidthsTouching` },
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
