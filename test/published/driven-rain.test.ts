/**
 * Rain driven by wind. ISO 15927-3 and its terrain table, as coded in a public building-physics script; Lacy, as quoted by
 * van Mook (2002); ASHRAE 160 as printed on a wiki; driving rain factor after Straube (fall-speed constants from memory);
 * power law of wind as written out in an open building-energy reference manual.
 */
import { describe, expect, it } from "vitest";
import { localWind } from "../../src/equations/cavity/local-wind.ts";
import { windPressure } from "../../src/equations/cavity/wind-pressure.ts";
import { drivingRainFactor } from "../../src/equations/rain/driving-rain-factor.ts";
import { drivingRainIndex } from "../../src/equations/rain/driving-rain-index.ts";
import { rainRoughness } from "../../src/equations/rain/rain-roughness.ts";
import { rainWallIndex } from "../../src/equations/rain/rain-wall-index.ts";
import { windDrivenRain } from "../../src/equations/rain/wind-driven-rain.ts";
import { windDrivenRainLacy } from "../../src/equations/rain/wind-driven-rain-lacy.ts";
import { windDrivenRainWall } from "../../src/equations/rain/wind-driven-rain-wall.ts";

describe("5 m/s and 2 mm/h, square to the wall", () => {
  it("ISO 15927-3: 2.057 mm/h", () => {
    expect(windDrivenRain({ windMPerS: 5, rainMmPerH: 2, angleDeg: 0 })).toBeCloseTo(2.057, 3);
  });

  it("Lacy: 2.02 mm/h", () => {
    expect(windDrivenRainLacy({ windMPerS: 5, rainMmPerH: 2 })).toBeCloseTo(2.02, 2);
  });

  it("ASHRAE 160, open and running down: 0.2 s/m gives 2 mm/h", () => {
    const wall = { exposure: 1, deposition: 1, windMPerS: 5, rainMmPerH: 2, angleDeg: 0 };
    expect(windDrivenRainWall(wall)).toBeCloseTo(2, 9);
  });

  it("the three sources lie within 3 % of each other", () => {
    const values = [
      windDrivenRain({ windMPerS: 5, rainMmPerH: 2, angleDeg: 0 }),
      windDrivenRainLacy({ windMPerS: 5, rainMmPerH: 2 }),
      windDrivenRainWall({ exposure: 1, deposition: 1, windMPerS: 5, rainMmPerH: 2, angleDeg: 0 }),
    ];
    expect(Math.max(...values) / Math.min(...values)).toBeLessThan(1.03);
  });

  it("comes at half at 60° and not at all from behind", () => {
    const rain = { windMPerS: 5, rainMmPerH: 2 };
    expect(windDrivenRain({ ...rain, angleDeg: 60 })).toBeCloseTo(2.057 / 2, 3);
    expect(windDrivenRain({ ...rain, angleDeg: 100 })).toBe(0);
  });
});

describe("ISO 15927-3, terrain: the coefficient stays below its least height", () => {
  it.each([
    ["I", 0.17, 0.01, 2],
    ["II", 0.19, 0.05, 4],
    ["III", 0.22, 0.3, 8],
    ["IV", 0.24, 1, 16],
  ])("%s", (_, terrainFactor, roughnessM, leastHeightM) => {
    const terrain = { terrainFactor, roughnessM, leastHeightM };
    const least = terrainFactor * Math.log(leastHeightM / roughnessM);
    expect(rainRoughness({ ...terrain, heightM: 1 })).toBeCloseTo(least, 9);
    expect(rainRoughness({ ...terrain, heightM: leastHeightM * 2 })).toBeCloseTo(
      least + terrainFactor * Math.LN2,
      9,
    );
  });

  it("rougher terrain drives less rain at 3 m", () => {
    const at3m = [
      [0.17, 0.01, 2],
      [0.19, 0.05, 4],
      [0.22, 0.3, 8],
      [0.24, 1, 16],
    ].map(([terrainFactor = 0, roughnessM = 1, leastHeightM = 1]) =>
      rainRoughness({ heightM: 3, terrainFactor, roughnessM, leastHeightM }),
    );
    expect(at3m).toEqual([...at3m].sort((a, b) => b - a));
  });

  it("a wall's index is the product of its factors", () => {
    const wall = { airfieldIndex: 400, roughness: 0.9, topography: 1, obstruction: 0.5, wallFactor: 0.4 };
    expect(rainWallIndex(wall)).toBeCloseTo(72, 9);
  });
});

describe("driving rain factor (s/m; constants in part from memory)", () => {
  it.each([
    [1, 0.235],
    [2, 0.207],
    [5, 0.176],
  ])("at %d mm/h", (rainMmPerH, printed) => {
    expect(drivingRainFactor({ rainMmPerH })).toBeCloseTo(printed, 3);
  });
});

it("Lacy's yearly index is metres of rain times metres a second: 925 mm and 4.2 m/s, by hand 3.885 m²/s", () => {
  expect(drivingRainIndex({ rainMm: 925, windMPerS: 4.2 })).toBeCloseTo(3.885, 9);
});

describe("wind at the wall", () => {
  const station = { stationMPerS: 4, stationHeightM: 10, stationLayerM: 270, stationExponent: 0.14 };

  it("is the station's own at its height and in its terrain", () => {
    expect(localWind({ ...station, heightM: 10, layerM: 270, exponent: 0.14 })).toBeCloseTo(4, 9);
  });

  // The ratios of the manual's three terrains at 10 m, worked by hand from its exponents and layers.
  it.each([
    ["rough", 370, 0.22, 2.869],
    ["town", 460, 0.33, 1.795],
  ])("%s", (_, layerM, exponent, expected) => {
    expect(localWind({ ...station, heightM: 10, layerM, exponent })).toBeCloseTo(expected, 2);
  });

  it("adds ½ρv² by its difference of coefficients", () => {
    expect(windPressure({ coefficientDifference: 0.15, densityKgPerM3: 1.25, windMPerS: 4 })).toBeCloseTo(
      1.5,
      9,
    );
  });
});
