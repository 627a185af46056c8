/** P021: the ultraviolet that the membrane takes, in a year at its brightest point and while bare, against its data sheet. */
import { type Choice, type Finding, finding, type Working } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { type GapAtBevel, gapsUnder } from "./light/keep-under.ts";
import type { YearOfLight } from "./light/model.ts";
import { lightInput } from "./light/working.ts";
import { type ShownLight, type ZoneLight, zoneLights } from "./light/zone-light.ts";
import { compared, greatest, holds, written } from "./working.ts";

const PATH = "/limits/membrane/maxUvPerYear";

const LIGHT_SOURCE = {
  kind: "document",
  document: "Bird and Hulstrom, SERI/TR-642-761 (1981); Hottel's crossed strings; shares of ASTM G173",
} as const;

export function lightDose(context: ProofContext): Finding[] {
  const lights = zoneLights(context);
  if (!lights) {
    const [path = "/site/climate/snowDepthMm"] = context.demands.light.groundLacks;
    return [
      finding({
        code: "P021",
        outcome: "cannot evaluate",
        where: { path },
        says: message("light.dose.no-ground"),
        hint: message("light.dose.enter-ground"),
        source: LIGHT_SOURCE,
      }),
    ];
  }
  return [...lights.map((light) => judged(context, light)), ...whileBare(context, lights)];
}

function judged(context: ProofContext, light: ZoneLight): Finding {
  const { view, worst } = light;
  const where = { path: PATH, ...view.where };
  if (!worst) {
    return finding({
      code: "P021",
      outcome: "not applicable",
      where,
      says: message("light.dose.closed"),
      source: LIGHT_SOURCE,
    });
  }
  const limit = context.project.limits.membrane?.maxUvPerYear;
  const demand = worst.point.year.uvMJYear;
  const values = {
    peak: demand,
    average: light.average.uvMJYear,
    bare: light.bare.uvMJYear,
    gap: worst.kind.slot.gapMm,
    sky: message(context.light?.weather ? "light.sky.weather" : "light.sky.clear"),
    ...bareWeeks(light),
  };
  if (!limit) {
    return finding({
      code: "P021",
      outcome: "attention",
      where,
      says: message("light.dose.unstated", values),
      hint: message("light.dose.ask"),
      working: working(context, worst),
      source: LIGHT_SOURCE,
      figures: figuresBehind(context, light),
    });
  }
  const within = holds("at most", { demand, limit: limit.value });
  const choices = within ? [] : choicesFor(light, worst, limit.value);
  return finding({
    code: "P021",
    outcome: within ? "pass" : "fail",
    where,
    says: message(within ? "light.dose.within" : "light.dose.over", { limit: limit.value, ...values }),
    ...(within ? {} : { hint: choices[0]?.says ?? message("light.dose.no-gap") }),
    ...(choices.length > 0 ? { choices } : {}),
    ...compared("at most", { demand, limit: limit.value, unit: "MJ/m²" }),
    working: working(context, worst, { value: limit.value, basis: limit.basis }),
    source: LIGHT_SOURCE,
    figures: figuresBehind(context, light),
  });
}

/** Of sky and ground, and of the wood whose gaps open; a year of weather needs no clear air. */
function figuresBehind({ demands, light }: ProofContext, { view }: ZoneLight): string[] {
  const names = demands.light.figures.filter((name) => !light?.weather || !CLEAR_SKY.test(name));
  return [...names, ...(demands.boards[view.cladding.id]?.seasonal?.figures ?? [])];
}

const CLEAR_SKY = /^light\.(?:air|sun)\./;

/** As many weeks of the bare wall in its brightest month. */
export function bareWeeks(light: ShownLight): { weeks: number; month: ReturnType<typeof message> } {
  const { uvMJ, month } = brightestWeek(light);
  return { weeks: (light.worst?.point.year.uvMJYear ?? 0) / uvMJ, month };
}

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** A week of the bare wall in its brightest month (MJ/m²). */
function brightestWeek({ bare }: ShownLight): { uvMJ: number; month: ReturnType<typeof message> } {
  const most = Math.max(...bare.uvMJ);
  const at = bare.uvMJ.indexOf(most);
  return { uvMJ: (most * 7) / (DAYS[at] ?? 30), month: message(`proof.month.${at + 1}`) };
}

const BARE_PATH = "/limits/membrane/maxUvUncovered";

/** The weeks before the cladding, as if all fell in the brightest month on the brightest face; nothing where no limit is stated. */
function whileBare(context: ProofContext, lights: readonly ZoneLight[]): Finding[] {
  const { project } = context;
  const limit = project.limits.membrane?.maxUvUncovered;
  const brightestZone = greatest(lights, (light) => brightestWeek(light).uvMJ);
  if (!limit || !brightestZone) return [];
  const { weeksUncovered: weeks } = project.site;
  if (weeks === undefined) {
    return [
      finding({
        code: "P021",
        outcome: "cannot evaluate",
        where: { path: "/site/weeksUncovered" },
        says: message("proof.weeks.no-plan"),
        source: { kind: "your data sheet" },
      }),
    ];
  }
  const { uvMJ, month } = brightestWeek(brightestZone);
  const demand = weeks * uvMJ;
  const within = holds("at most", { demand, limit: limit.value });
  return [
    finding({
      code: "P021",
      outcome: within ? "pass" : "fail",
      where: { path: BARE_PATH, ...brightestZone.view.where },
      says: message(within ? "light.bare.within" : "light.bare.over", {
        weeks,
        month,
        dose: demand,
        limit: limit.value,
      }),
      ...(within ? {} : { hint: message("light.bare.cover", { weeks: limit.value / uvMJ }) }),
      ...compared("at most", { demand, limit: limit.value, unit: "MJ/m²" }),
      working: {
        formula: "n·H_w ≤ H_max",
        inputs: [
          lightInput("n", { meaning: "weeks", value: weeks, unit: "weeks", basis: "given" }),
          lightInput("H_w", { meaning: "bare-week", value: uvMJ, unit: "MJ/m²", basis: "typical" }),
          lightInput("H_max", {
            meaning: "most-bare",
            value: limit.value,
            unit: "MJ/m²",
            basis: limit.basis,
          }),
        ],
        substituted: `${weeks} × ${written(uvMJ, 2)} = ${written(demand)} ${within ? "≤" : ">"} ${limit.value}`,
      },
      source: LIGHT_SOURCE,
      figures: figuresBehind(context, brightestZone),
    }),
  ];
}

type Worst = NonNullable<ZoneLight["worst"]>;

/** Bevels that a saw cuts; sheets have none, nor have upright joints. */
function bevelsFor({ view }: ShownLight, { kind }: Worst): readonly number[] {
  const { cladding } = view;
  const level = cladding.kind === "boards" && cladding.direction === "horizontal" && kind.across === "level";
  return level ? [...new Set([0, 15, 30, cladding.bevelDeg])].sort((a, b) => a - b) : [0];
}

/** Gaps under this let neither air nor water out, ones over this are no joints (mm, as fixed). */
const GAPS = [3, 50] as const;

/** The widest gap at each bevel that keeps a dose at the brightest point, at the gap's widest in the year (mm). */
export function gapsForLimit(light: ShownLight, mostMJ: number): GapAtBevel[] {
  const { worst } = light;
  if (!worst) return [];
  const opening = worst.kind.slot.gapMm - worst.kind.fixedMm;
  return gapsUnder(worst.lit, worst.kind.slot, {
    mostMJ,
    gaps: [GAPS[0] + opening, GAPS[1] + opening],
    bevelsDeg: bevelsFor(light, worst),
  });
}

function choicesFor(light: ZoneLight, { kind }: Worst, mostMJ: number): Choice[] {
  const opening = kind.slot.gapMm - kind.fixedMm;
  return gapsForLimit(light, mostMJ)
    .flatMap(({ bevelDeg, widestMm }) =>
      widestMm === undefined ? [] : [{ bevelDeg, gap: widestMm - opening }],
    )
    .sort((a, b) => b.gap - a.gap)
    .map(({ bevelDeg, gap }) => ({
      says: message(bevelDeg > 0 ? "light.dose.gap-at-bevel" : "light.dose.gap-square", {
        gap,
        bevel: bevelDeg,
      }),
    }));
}

function working(
  { demands }: ProofContext,
  { kind, point }: Worst,
  limit?: { readonly value: number; readonly basis: "given" | "typical" | "memory" },
): Working {
  const { beam, sky, ground }: YearOfLight["uvParts"] = point.year.uvParts;
  const seasonal = kind.slot.gapMm > kind.fixedMm ? "typical" : "derived";
  const groundBasis = demands.light.ground?.basis ?? "typical";
  const { gapMm, thicknessMm, bevelDeg, cavityMm } = kind.slot;
  const total = written(point.year.uvMJYear);
  return {
    formula: limit ? "H_b + H_s + H_g ≤ H_max" : "H_b + H_s + H_g",
    inputs: [
      lightInput("g", { meaning: "gap-widest", value: gapMm, unit: "mm", basis: seasonal }),
      lightInput("t", { meaning: "thickness", value: thicknessMm, unit: "mm", basis: "given" }),
      lightInput("b", { meaning: "bevel", value: bevelDeg, unit: "°", basis: "given" }),
      lightInput("c", { meaning: "cavity", value: cavityMm, unit: "mm", basis: "derived" }),
      lightInput("H_b", { meaning: "from-beam", value: beam, unit: "MJ/m²", basis: "typical" }),
      lightInput("H_s", { meaning: "from-sky", value: sky, unit: "MJ/m²", basis: "typical" }),
      lightInput("H_g", { meaning: "from-ground", value: ground, unit: "MJ/m²", basis: groundBasis }),
      ...(limit
        ? [lightInput("H_max", { meaning: "most", value: limit.value, unit: "MJ/m²", basis: limit.basis })]
        : []),
    ],
    substituted: `${written(beam)} + ${written(sky)} + ${written(ground)} = ${total}${
      limit ? ` ${point.year.uvMJYear <= limit.value ? "≤" : ">"} ${limit.value}` : ""
    }`,
  };
}
