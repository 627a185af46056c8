/**
 * The worked examples of docs/worked, each step reckoned again from its own inputs, unrounded, and held to the printed digits. Their
 * numbers were worked apart from the program; the winds are those of Table C-1 (Abbotsford) and of Steel Buildings in Europe.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { bendingStress } from "../../src/equations/beams/bending-stress.ts";
import { type Bent, continuousBeam } from "../../src/equations/beams/continuous-beam.ts";
import { enCombined } from "../../src/equations/screws/en-combined.ts";
import { enEmbedment } from "../../src/equations/screws/en-embedment.ts";
import { enHeadPullThrough } from "../../src/equations/screws/en-head-pull-through.ts";
import { enHeadStrength } from "../../src/equations/screws/en-head-strength.ts";
import { enScrewShear } from "../../src/equations/screws/en-screw-shear.ts";
import { enScrewWithdrawal } from "../../src/equations/screws/en-screw-withdrawal.ts";
import { enYieldMoment } from "../../src/equations/screws/en-yield-moment.ts";
import { ndsBearingStrength } from "../../src/equations/screws/nds-bearing-strength.ts";
import { ndsCombined } from "../../src/equations/screws/nds-combined.ts";
import { ndsHeadPullThrough } from "../../src/equations/screws/nds-head-pull-through.ts";
import { ndsLateral } from "../../src/equations/screws/nds-lateral.ts";
import { ndsScrewWithdrawal } from "../../src/equations/screws/nds-screw-withdrawal.ts";
import { asceExposure } from "../../src/equations/wind/asce-exposure.ts";
import { asceVelocityPressure } from "../../src/equations/wind/asce-velocity-pressure.ts";
import { enBasicPressure } from "../../src/equations/wind/en-basic-pressure.ts";
import { enPeakPressure } from "../../src/equations/wind/en-peak-pressure.ts";
import { enRoughness } from "../../src/equations/wind/en-roughness.ts";
import { enStripLength } from "../../src/equations/wind/en-strip-length.ts";
import { enTerrainFactor } from "../../src/equations/wind/en-terrain-factor.ts";
import { enTurbulence } from "../../src/equations/wind/en-turbulence.ts";
import { endStripWidth } from "../../src/equations/wind/end-strip-width.ts";
import { nbcExposure } from "../../src/equations/wind/nbc-exposure.ts";
import { nbcPressure } from "../../src/equations/wind/nbc-pressure.ts";
import { windNetPressure } from "../../src/equations/wind/wind-net-pressure.ts";

const G = 9.80665;

interface Printed {
  readonly value: number;
  readonly decimals: number;
}

/** The results of a page's table, in the order of its steps. */
function printedIn(name: string): Printed[] {
  const page = readFileSync(new URL(`../../docs/worked/${name}.md`, import.meta.url), "utf8");
  const rows = [...page.matchAll(/^\| (\d+) \|.*\| (-?[\d.]+)(?: [^|]+)? \|$/gm)];
  expect(rows.map(([, step]) => Number(step))).toEqual(rows.map((_, i) => i + 1));
  return rows.map(([, , text = ""]) => ({
    value: Number(text),
    decimals: text.includes(".") ? text.length - text.indexOf(".") - 1 : 0,
  }));
}

function bent(spans: readonly number[], load: number): Bent {
  const supports = [0];
  for (const span of spans) supports.push((supports.at(-1) ?? 0) + span);
  const found = continuousBeam({ supports, from: 0, to: supports.at(-1) ?? 0, load });
  if (!found) throw new Error("no beam");
  return found;
}

function canada(): number[] {
  const exposure = nbcExposure({ heightM: 6, factor: 1, referenceM: 10, exponent: 0.2, least: 0.9 });
  const pressurePa = nbcPressure({ importance: 1, hourlyPa: 440, exposure, topography: 1 });
  const pull = -windNetPressure({ pressurePa, outside: -2.1, inside: 2 * 0.3 });
  const factored = 1.4 * pull;
  const line = bent([600, 600], 1).reactions[1] ?? 0;
  const area = (line * 300) / 1e6;
  const strip = bent([600, 600], factored / 1e6);
  const sag = bent([600, 600], (0.75 * pull) / 1e6).sag.stiff / ((7000 * 8 ** 3) / 12);
  const weight = 1.2 * 2.4 * 0.008 * 1750 * G * 1.25;
  return [
    exposure,
    pressurePa,
    endStripWidth({ leastWidthM: 8, heightM: 6, floorM: 1 }),
    pull,
    factored,
    line,
    area,
    factored * area,
    strip.moment,
    bendingStress({ momentNmm: strip.moment, widthMm: 1, thicknessMm: 8 }),
    sag,
    28 * 29,
    (factored * area) / 900,
    weight,
    (factored * area) / 900 + weight / 1100,
  ];
}

function unitedStates(): number[] {
  const exposure = asceExposure({
    heightM: 3.3528,
    leastHeightM: 4.572,
    gradientM: 274.32,
    alpha: 9.5,
    factor: 2.01,
  });
  const pressurePa = asceVelocityPressure({
    speedMPerS: 51.4,
    exposure,
    topography: 1,
    directionality: 0.85,
    elevation: 1,
  });
  const pull = -windNetPressure({ pressurePa, outside: -1.4, inside: 0.18 });
  const line = bent([406.4, 406.4, 406.4, 406.4], 1).reactions[1] ?? 0;
  const area = (line * 140) / 1e6;
  const pullN = 0.6 * pull * area;
  const perMm = ndsScrewWithdrawal({ specificGravity: 0.42, diameterMm: 4.826 });
  const head = ndsHeadPullThrough({ specificGravity: 0.36, headMm: 9.2, thicknessMm: 19.05 });
  const [sideMPa, mainMPa] = [
    ndsBearingStrength({ specificGravity: 0.36 }),
    ndsBearingStrength({ specificGravity: 0.42 }),
  ];
  const lateral = ndsLateral({
    rootMm: 3.8608,
    yieldMPa: 80_000 * 0.0068947573,
    sideMm: 19.05,
    mainMm: 25.4 - 4.826,
    gapMm: 0,
    sideMPa,
    mainMPa,
  });
  const shearN = (1.2192 * 0.14 * 0.01905 * 391 * G) / 4;
  const pullHeldN = 1.6 * Math.min(head, perMm * 25.4);
  return [
    exposure,
    pressurePa,
    endStripWidth({ leastWidthM: 3.6576, heightM: 3.3528, floorM: 0.9144 }),
    pull,
    0.6 * pull,
    line,
    area,
    pullN,
    perMm,
    perMm * 25.4 * 1.6,
    head,
    head * 1.6,
    sideMPa,
    mainMPa,
    lateral,
    shearN,
    ndsCombined({ pullN, shearN, pullHeldN, shearHeldN: 1.6 * lateral }),
  ];
}

function europe(): number[] {
  const terrain = { heightM: 8, roughnessM: 0.3, leastHeightM: 5 };
  const wind = { speedMPerS: 26, densityKgPerM3: 1.25 };
  const e = enStripLength({ crosswindM: 32, heightM: 8 });
  const pressurePa = enPeakPressure({ ...terrain, ...wind });
  const pull = -windNetPressure({ pressurePa, outside: -1.4, inside: 0.2 });
  const line = bent([600, 600], 1).reactions[1] ?? 0;
  const load = ((1.5 * pull) / 1e6) * line;
  const batten = bent([600, 600, 600], load);
  const withdrawal = enScrewWithdrawal({ diameterMm: 8, threadMm: 56, densityKgPerM3: 320 });
  const head = enHeadPullThrough({
    strengthMPa: enHeadStrength({ densityKgPerM3: 320 }),
    headMm: 15,
    densityKgPerM3: 320,
    declaredAtKgPerM3: 320,
  });
  const diameterMm = 1.1 * 5.4;
  const embedment = enEmbedment({ densityKgPerM3: 320, diameterMm, predrilled: 0 });
  const yieldNmm = enYieldMoment({ tensileMPa: 800, diameterMm });
  const shear = enScrewShear({
    diameterMm,
    yieldNmm,
    headSideMm: 34,
    pointSideMm: 56,
    headSideMPa: embedment,
    pointSideMPa: embedment,
    pullHeldN: 0,
  });
  const design = (value: number): number => (value * 0.9) / 1.3;
  const pullN = batten.reactions[1] ?? 0;
  return [
    enBasicPressure(wind),
    enTerrainFactor(terrain),
    enRoughness(terrain),
    enTurbulence(terrain),
    pressurePa,
    e,
    e / 5,
    pull,
    1.5 * pull,
    line,
    load,
    batten.moment,
    bendingStress({ momentNmm: batten.moment, widthMm: 70, thicknessMm: 34 }),
    design(18),
    pullN,
    withdrawal,
    design(withdrawal),
    head,
    design(head),
    embedment,
    yieldNmm,
    shear,
    design(shear),
    enCombined({ pullN, shearN: 60, pullHeldN: design(head), shearHeldN: design(shear) }),
  ];
}

describe.each([
  ["canada", canada],
  ["united-states", unitedStates],
  ["europe", europe],
] as const)("docs/worked/%s.md", (name, work) => {
  const reckoned = work();
  const printed = printedIn(name);

  it("has a step for each number", () => {
    expect(printed).toHaveLength(reckoned.length);
  });

  it.each(printed.map(({ value, decimals }, i) => [i + 1, value, decimals] as const))(
    "step %d: %d",
    (step, value, decimals) => {
      expect(Math.abs((reckoned[step - 1] ?? Number.NaN) - value)).toBeLessThan(0.5001 * 10 ** -decimals);
    },
  );
});
