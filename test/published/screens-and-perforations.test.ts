/**
 * Blevins, Applied Fluid Dynamics Handbook (1984), as quoted in the tests of an open fluids library: losses of grills and
 * screens on the speed before them. Perforators' handbook: open area of round holes, with its second example, which prints
 * 25.17 % with √3/2 taken as 0.87 and 26.16 % by a misprint.
 */
import { describe, expect, it } from "vitest";
import { mesh } from "../../src/catalogue/meshes.ts";
import { grillLoss } from "../../src/equations/cavity/grill-loss.ts";
import { perforatedSquareShare } from "../../src/equations/cavity/perforated-square-share.ts";
import { perforatedStaggeredShare } from "../../src/equations/cavity/perforated-staggered-share.ts";
import { screenLoss } from "../../src/equations/cavity/screen-loss.ts";

describe("Blevins", () => {
  it("a grill with square edges, 45 % open, loses 5.296296", () => {
    expect(grillLoss({ freeShare: 0.45 })).toBeCloseTo(5.296296, 6);
  });

  it("a screen of round wires, half open, at a Reynolds number of 100 loses 2.1", () => {
    expect(screenLoss({ freeShare: 0.5, reynolds: 100 })).toBeCloseTo(2.1, 9);
  });

  // The table of factors behind it, at half open: three times the factor.
  it.each([
    [20, 1.3],
    [30, 1.1],
    [40, 0.95],
    [60, 0.83],
    [80, 0.75],
    [200, 0.6],
    [400, 0.52],
  ])("the screen's factor at a Reynolds number of %d is %d", (reynolds, factor) => {
    expect(screenLoss({ freeShare: 0.5, reynolds })).toBeCloseTo(3 * factor, 9);
  });

  it("runs straight between the table's places and level past its ends", () => {
    expect(screenLoss({ freeShare: 0.5, reynolds: 150 })).toBeCloseTo(3 * 0.65, 9);
    expect(screenLoss({ freeShare: 0.5, reynolds: 5 })).toBeCloseTo(3 * 1.3, 9);
    expect(screenLoss({ freeShare: 0.5, reynolds: 5000 })).toBeCloseTo(3 * 0.52, 9);
  });
});

describe("perforated sheet, percent open", () => {
  it.each([
    [3, 5, 32.65],
    [5, 8, 35.43],
    [4, 6, 40.31],
    [5, 7, 46.27],
  ])("%d mm at %d mm staggered", (holeMm, pitchMm, percent) => {
    const share = 100 * perforatedStaggeredShare({ holeMm, pitchMm });
    expect(share).toBeCloseTo(percent, 2);
    expect(mesh(`staggered-60-${holeMm}-${pitchMm}`)?.freeShare.value).toBeCloseTo(share, 2);
  });

  it("3 mm at 5 mm in squares", () => {
    expect(100 * perforatedSquareShare({ holeMm: 3, pitchMm: 5 })).toBeCloseTo(28.27, 2);
  });

  it("the factor of staggered holes is 0.906899682", () => {
    expect(perforatedStaggeredShare({ holeMm: 1, pitchMm: 1 })).toBeCloseTo(0.906899682, 9);
  });

  it("the handbook's second example: 25.28 % exactly, 25.17 % with its 0.87", () => {
    const exact = 100 * perforatedStaggeredShare({ holeMm: 0.066, pitchMm: 0.125 });
    expect(exact).toBeCloseTo(25.28, 2);
    expect((exact * Math.sqrt(3)) / 2 / 0.87).toBeCloseTo(25.17, 1);
  });
});
