/** What the moisture of boards at fixing says of the gaps that were set out: M006 and M007. */
import { builtInMoisture } from "../../catalogue/finishes.ts";
import { sourceOf } from "../../codes/rule-value.ts";
import {
  type Basis,
  type Finding,
  finding,
  type Working,
  type WorkingInput,
} from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { compared, holds, written } from "../../proof/working.ts";
import { message } from "../../text/message.ts";
import { type CorrectedReading, type FixingMoisture, fixingMoisture } from "./at-fixing.ts";

/** How far the mean may lie from what the gaps were set out for (points of percent), common practice: about what a meter errs by. */
const APART = 2;

export function moistureFindings(project: Project, readings: readonly CorrectedReading[]): Finding[] {
  return [
    ...uncorrected(readings),
    ...tooWet(project, readings),
    ...fixingMoisture(project, readings).flatMap((found) => otherThanSetOut(project, found)),
  ];
}

function uncorrected(readings: readonly CorrectedReading[]): Finding[] {
  const lacking = readings.filter(({ percent }) => percent === undefined);
  if (lacking.length === 0) return [];
  const calibration = lacking.some(({ lacks }) => lacks.includes("calibration"));
  return [
    finding({
      code: "M006",
      outcome: "cannot evaluate",
      where: { ...(calibration && { path: "/moistureMeter" }), marks: marksOf(lacking) },
      says: message("moisture.uncorrected", { count: lacking.length }),
      hint: message(calibration ? "moisture.uncorrected.meter" : "moisture.uncorrected.temperature"),
    }),
  ];
}

function tooWet(project: Project, readings: readonly CorrectedReading[]): Finding[] {
  const figure = builtInMoisture();
  const limit = figure.value;
  const known = readings.filter(({ percent }) => percent !== undefined);
  const [first, ...rest] = known;
  if (!first) return [];
  const of = ({ percent = 0 }: CorrectedReading): number => percent;
  const wettest = rest.reduce((a, b) => (of(b) > of(a) ? b : a), first);
  const wet = known.filter((one) => !holds("at most", { demand: of(one), limit }));
  return [
    finding({
      code: "M006",
      outcome: wet.length === 0 ? "pass" : "fail",
      where: { marks: marksOf(wet.length > 0 ? wet : [wettest]) },
      says: message(wet.length === 0 ? "moisture.dry" : "moisture.wet", {
        count: wet.length,
        most: of(wettest),
        limit,
      }),
      ...(wet.length > 0 && { hint: message("moisture.wet.hint") }),
      ...compared("at most", { demand: of(wettest), limit, unit: "%" }),
      working: workingOf(wettest, project),
      source: sourceOf(figure),
    }),
  ];
}

/** A species whose points are not told may be out by some: a pass is provisional then. */
function workingOf(
  { entry: { body }, points, percent = 0 }: CorrectedReading,
  { moistureMeter }: Project,
): Working {
  const { meterPercent: r, temperatureC: t = 0 } = body;
  const c = moistureMeter?.calibratedAtC ?? 0;
  const s = points ?? 0;
  const given = (symbol: string, value: number, unit: string, basis: Basis = "given"): WorkingInput => ({
    symbol,
    meaning: message(`moisture.symbol.${symbol}`),
    value,
    unit,
    basis,
  });
  return {
    formula: "w = r + 0.5 · (c − t) / 5.6 + s",
    inputs: [
      given("r", r, "%"),
      given("c", c, "°C"),
      given("t", t, "°C"),
      given("s", s, "%", points === undefined ? "typical" : "given"),
    ],
    substituted: `${written(r)} + 0.5 · (${written(c)} − ${written(t)}) / 5.6 + ${written(s)} = ${written(percent)}`,
  };
}

function otherThanSetOut(project: Project, { cladding, mean, count, deviation }: FixingMoisture): Finding[] {
  const index = project.claddings.findIndex(({ id }) => id === cladding);
  const own = project.claddings[index];
  if (own?.kind !== "boards") return [];
  const path = `/claddings/${index}/moisturePercent`;
  const rounded = Math.round(mean * 10) / 10;
  const value = { ...own.moisturePercent, atFixing: rounded };
  const edit = [{ op: "add" as const, path, value }];
  const setOut = own.moisturePercent?.atFixing;
  const values = { cladding, mean, count, deviation: deviation ?? 0 };
  if (setOut === undefined) {
    return [
      finding({
        code: "M007",
        outcome: "cannot evaluate",
        where: { path },
        says: message("moisture.not-set-out", values),
        hint: message("moisture.take"),
        edit,
      }),
    ];
  }
  const apart = Math.abs(mean - setOut);
  const near = holds("at most", { demand: apart, limit: APART });
  return [
    finding({
      code: "M007",
      outcome: near ? "pass" : "attention",
      where: { path },
      says: message(near ? "moisture.as-set-out" : "moisture.apart", { ...values, setOut }),
      ...(near ? {} : { hint: message("moisture.take"), edit }),
      ...compared("at most", { demand: apart, limit: APART, unit: "%" }),
      source: { kind: "common practice" },
    }),
  ];
}

function marksOf(readings: readonly CorrectedReading[]): string[] {
  return [...new Set(readings.flatMap(({ entry: { place } }) => place.piece ?? []))];
}
