/**
 * EN 1995-1-1, screws. A public notebook of timber connections: screw of 5 mm with a head of 10 mm in C24 (350 kg/m³), predrilled, under
 * 38 mm into 75 mm, 50 mm deep, permanent load in service class 2 (0.6, 1.3), wire of 540 MPa; it adds a quarter of the design pull to
 * the characteristic load. 5 mm lies outside Equation 8.39, so its withdrawal is not checked here. Withdrawal of 8 mm: Equation 8.39 as
 * printed, worked apart.
 */
import { expect, it } from "vitest";
import { enCombined } from "../../src/equations/screws/en-combined.ts";
import { enEmbedment } from "../../src/equations/screws/en-embedment.ts";
import { enHeadPullThrough } from "../../src/equations/screws/en-head-pull-through.ts";
import { enHeadStrength } from "../../src/equations/screws/en-head-strength.ts";
import { enScrewShear } from "../../src/equations/screws/en-screw-shear.ts";
import { EN_SCREW_WITHDRAWAL, enScrewWithdrawal } from "../../src/equations/screws/en-screw-withdrawal.ts";
import { enYieldMoment } from "../../src/equations/screws/en-yield-moment.ts";

const DENSITY = 350;
const DESIGN = 0.6 / 1.3;
const strengthMPa = enHeadStrength({ densityKgPerM3: DENSITY });
const pull =
  enHeadPullThrough({ strengthMPa, headMm: 10, densityKgPerM3: DENSITY, declaredAtKgPerM3: DENSITY }) *
  DESIGN;
const embedment = enEmbedment({ densityKgPerM3: DENSITY, diameterMm: 5, predrilled: 1 });
const shear =
  enScrewShear({
    diameterMm: 5,
    yieldNmm: enYieldMoment({ tensileMPa: 540, diameterMm: 5 }),
    headSideMm: 38,
    pointSideMm: 75,
    headSideMPa: embedment,
    pointSideMPa: embedment,
    pullHeldN: pull,
  }) * DESIGN;

it("the head pulls through at 395.77 N", () => {
  expect(pull).toBeCloseTo(395.77, 2);
});

it("shear of 949.58 N, bent over twice", () => {
  expect(Math.abs(shear - 949.58)).toBeLessThan(0.005);
});

it("300 N along and 500 N across use 0.85 of it", () => {
  expect(
    Math.abs(enCombined({ pullN: 300, shearN: 500, pullHeldN: pull, shearHeldN: shear }) - 0.85),
  ).toBeLessThan(0.005);
});

it("8 mm, 64 mm of thread, 350 kg/m³: 13.155119 N/mm²", () => {
  const held = enScrewWithdrawal({ diameterMm: 8, threadMm: 64, densityKgPerM3: 350 });
  expect(held / (8 * 64)).toBeCloseTo(13.155119, 5);
});

it("a screw of 5 mm lies outside Equation 8.39", () => {
  expect(EN_SCREW_WITHDRAWAL.reckon({ diameterMm: 5, threadMm: 50, densityKgPerM3: 350 })).toEqual({
    ok: false,
    missing: [],
    outside: ["diameterMm"],
  });
});
