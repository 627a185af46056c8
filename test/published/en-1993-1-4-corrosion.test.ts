/**
 * EN 1993-1-4, Annex A, Tables A.1 and A.2: exposure of stainless steel outdoors, as printed on several suppliers' pages that
 * agree. Another transcription has 5 and 0.5 km in place of 1 and 0.25; the class at a sum of −20 is printed both ways.
 */
import { describe, expect, it } from "vitest";
import { chlorideExposure } from "../../src/equations/durability/chloride-exposure.ts";
import { corrosionClass } from "../../src/equations/durability/corrosion-class.ts";
import { sulphurExposure } from "../../src/equations/durability/sulphur-exposure.ts";

describe("Table A.1, F1", () => {
  it.each([
    [50, 5, 0],
    [10.1, 0.11, 0],
    [10, 5, -3],
    [1.1, 5, -3],
    [1, 5, -7],
    [0.26, 5, -7],
    [0.25, 5, -15],
    [50, 0.1, -3],
    [50, 0.011, -3],
    [50, 0.01, -7],
  ])("%d km from the sea, %d km from a salted road", (seaKm, roadKm, factor) => {
    expect(chlorideExposure({ seaKm, roadKm, shoreFactor: -15 })).toBe(factor);
  });
});

describe("Table A.1, F2", () => {
  it.each([
    [5, 0],
    [10, -5],
    [90, -5],
    [91, -10],
    [250, -10],
  ])("%d µg/m³", (sulphurDioxideUgPerM3, factor) => {
    expect(sulphurExposure({ sulphurDioxideUgPerM3 })).toBe(factor);
  });
});

describe("Table A.2, class of a sum", () => {
  it.each([
    [1, 1],
    [0, 2],
    [-6, 2],
    [-7, 3],
    [-14, 3],
    [-15, 4],
  ])("%d", (chlorideFactor, expected) => {
    expect(corrosionClass({ chlorideFactor, sulphurFactor: 0, washingFactor: 0 })).toBe(expected);
  });

  it.each([
    [-15, -5, 0, 4],
    [-15, -5, -2, 5],
  ])("%d, %d and %d", (chlorideFactor, sulphurFactor, washingFactor, expected) => {
    expect(corrosionClass({ chlorideFactor, sulphurFactor, washingFactor })).toBe(expected);
  });
});

describe("places (worked by hand)", () => {
  it.each([
    ["inland, washed by rain", 50, 5, 0, 2],
    ["5 km from the sea, unwashed", 5, 5, -7, 3],
    ["0.1 km from the sea, unwashed", 0.1, 5, -7, 5],
    ["inland, unwashed, 40 m from a salted road", 22, 0.04, -7, 3],
  ])("%s", (_, seaKm, roadKm, washingFactor, expected) => {
    const chlorideFactor = chlorideExposure({ seaKm, roadKm, shoreFactor: -15 });
    expect(corrosionClass({ chlorideFactor, sulphurFactor: 0, washingFactor })).toBe(expected);
  });
});
