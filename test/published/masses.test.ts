/**
 * Masses. Wood Handbook, FPL-GTR-282 (2021), Equation 4-14 with its two printed densities; areas worked by hand from
 * published densities (steel 7850, aluminium 2700 kg/m³, laminate of EN 438-6 at least 1350 kg/m³) and Table 5-3a.
 */
import { describe, expect, it } from "vitest";
import { areaMass } from "../../src/equations/durability/area-mass.ts";
import { woodDensity } from "../../src/equations/durability/wood-density.ts";

describe("Wood Handbook, Equation 4-14", () => {
  it.each([
    [0.6, 12, 672],
    [0.4, 100, 800],
  ])("specific gravity %d at %d %%", (specificGravity, moisturePercent, printed) => {
    expect(woodDensity({ specificGravity, moisturePercent })).toBeCloseTo(printed, 6);
  });
});

describe("a square metre of cladding (kg)", () => {
  it.each([
    ["steel 0.5 mm", 7850, 0.5, 3.9],
    ["steel 0.7 mm", 7850, 0.7, 5.5],
    ["aluminium 2 mm", 2700, 2, 5.4],
    ["laminate 8 mm", 1350, 8, 10.8],
    ["fibre cement 8 mm, light", 1650, 8, 13.2],
    ["fibre cement 8 mm, heavy", 1900, 8, 15.2],
  ])("%s", (_, densityKgPerM3, thicknessMm, printed) => {
    expect(areaMass({ densityKgPerM3, thicknessMm, openShare: 0 })).toBeCloseTo(printed, 1);
  });

  it.each([
    ["western redcedar 19 mm", 0.32, 19, 6.8],
    ["Douglas-fir 19 mm", 0.48, 19, 10.2],
    ["larch 20 mm", 0.52, 20, 11.6],
  ])("%s at 12 %%", (_, specificGravity, thicknessMm, printed) => {
    const densityKgPerM3 = woodDensity({ specificGravity, moisturePercent: 12 });
    expect(areaMass({ densityKgPerM3, thicknessMm, openShare: 0 })).toBeCloseTo(printed, 1);
  });

  it("open joints weigh nothing: 140 mm boards with 8 mm between", () => {
    expect(areaMass({ densityKgPerM3: 500, thicknessMm: 20, openShare: 8 / 148 })).toBeCloseTo(9.46, 2);
  });
});
