/**
 * ASHRAE Handbook of Fundamentals, SI edition, chapter 27, Example 3, as transcribed: a wall of 38 by 90 mm studs with 90 mm of
 * mineral fibre, a quarter of it framing. Its parallel paths are the upper limit of ISO 6946, its isothermal planes the lower.
 */
import { describe, expect, it } from "vitest";
import { resistanceLower } from "../../src/equations/heat/resistance-lower.ts";
import { resistanceUpper } from "../../src/equations/heat/resistance-upper.ts";

/** Outdoor film, siding, sheathing, wallboard, indoor film (m²K/W). */
const SERIES = 0.03 + 0.11 + 0.7 + 0.08 + 0.12;
const wall = { seriesM2KPerW: SERIES, mainM2KPerW: 2.3, bridgeM2KPerW: 0.77, bridgeShare: 0.25 };

describe("parallel paths", () => {
  // The other path's total is printed as 3.31, 0.03 less than its own rows make.
  it("through the studs 1.81 m²K/W", () => {
    expect(resistanceUpper({ ...wall, bridgeShare: 1 })).toBeCloseTo(1.81, 9);
  });

  it("U 0.36 W/m²K", () => {
    expect(1 / resistanceUpper(wall)).toBeCloseTo(0.36, 2);
  });
});

describe("isothermal planes", () => {
  it("the layer of studs and fibre has 1.54 m²K/W", () => {
    expect(resistanceLower({ ...wall, seriesM2KPerW: 0 })).toBeCloseTo(1.54, 2);
  });

  it("R 2.58 m²K/W, U 0.388 W/m²K", () => {
    expect(resistanceLower(wall)).toBeCloseTo(2.58, 2);
    expect(1 / resistanceLower(wall)).toBeCloseTo(0.388, 3);
  });
});
