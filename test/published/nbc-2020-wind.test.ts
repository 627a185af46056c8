/**
 * National Building Code of Canada 2020, 4.1.7. Pressures: a public worksheet of 4.1.7.3 and Figure 4.1.7.6. Local coefficients of
 * walls: end points of Figure 4.1.7.6.-B as read off by a structural help page, which rounds the pressure up to 1.8. Exposure: 4.1.7.3.(5)
 * as coded in several public scripts, values worked apart. Hourly pressure of Abbotsford: Table C-1 of the energy code; the rest of
 * that example is arithmetic.
 */
import { describe, expect, it } from "vitest";
import { coefficientByArea } from "../../src/equations/wind/coefficient-by-area.ts";
import { endStripWidth } from "../../src/equations/wind/end-strip-width.ts";
import { nbcExposure } from "../../src/equations/wind/nbc-exposure.ts";
import { nbcPressure } from "../../src/equations/wind/nbc-pressure.ts";
import { windNetPressure } from "../../src/equations/wind/wind-net-pressure.ts";

const OPEN = { factor: 1, referenceM: 10, exponent: 0.2, least: 0.9 };
const ROUGH = { factor: 0.7, referenceM: 12, exponent: 0.3, least: 0.7 };
const level = { importance: 1, topography: 1 };

describe("worksheet, q 1 kPa, Ce 0.9: kPa", () => {
  const pressurePa = nbcPressure({ ...level, hourlyPa: 1000, exposure: 0.9 });
  it.each([
    ["windward", 2 * 0.8, 1.44],
    ["leeward", 2 * -0.5, -0.9],
    ["side", 2 * -0.7, -1.26],
    ["inside, pushing", 2 * 0.3, 0.54],
    ["inside, pulling", 2 * -0.45, -0.81],
  ])("%s", (_, outside, kPa) => {
    expect(windNetPressure({ pressurePa, outside, inside: 0 }) / 1000).toBeCloseTo(kPa, 9);
  });
});

describe("worksheet, q 0.39 kPa: kPa to hundredths", () => {
  const pressurePa = nbcPressure({ ...level, hourlyPa: 390, exposure: 0.9 });
  it.each([
    [0.75, 0.26],
    [1.15, 0.4],
    [-2, -0.7],
  ])("CpCg %d: %d", (outside, kPa) => {
    expect(Math.abs(windNetPressure({ pressurePa, outside, inside: 0 }) / 1000 - kPa)).toBeLessThan(0.005);
  });
});

describe("width of the end zone: m", () => {
  it.each([
    ["the worksheet's least", 1, 1, 1],
    ["a house of 10 by 8, 6 high", 8, 6, 1],
    ["a tenth of the lesser side", 30, 10, 3],
    ["two fifths of the height", 60, 6, 2.4],
    ["a twenty-fifth of the lesser side", 100, 5, 4],
  ])("%s", (_, leastWidthM, heightM, printed) => {
    expect(endStripWidth({ leastWidthM, heightM, floorM: 1 })).toBeCloseTo(printed, 9);
  });
});

describe("Figure 4.1.7.6.-B", () => {
  const read = (areaM2: number, smallCoefficient: number, largeCoefficient: number): number =>
    coefficientByArea({ areaM2, smallM2: 1, largeM2: 50, smallCoefficient, largeCoefficient });
  it.each([
    ["end, suction", -2.1, -1.5, 1, -2.1],
    ["end, suction, under a square metre", -2.1, -1.5, 0.2, -2.1],
    ["end, suction", -2.1, -1.5, 50, -1.5],
    ["end, suction, past the chart", -2.1, -1.5, 400, -1.5],
    ["field, suction", -1.8, -1.5, 1, -1.8],
    ["field, suction", -1.8, -1.5, 50, -1.5],
    ["both, pressure", 1.75, 1.3, 50, 1.3],
  ])("%s", (_, small, large, area, printed) => {
    expect(read(area, small, large)).toBeCloseTo(printed, 9);
  });

  it("end, suction, 10 m²: −1.747", () => {
    expect(read(10, -2.1, -1.5)).toBeCloseTo(-1.747, 3);
  });

  it("pressure of a square metre is printed as 1.8, rounded up", () => {
    expect(Math.ceil(read(1, 1.75, 1.3) * 10) / 10).toBe(1.8);
  });
});

describe("exposure", () => {
  it.each([
    ["open at 10 m", OPEN, 10, 1],
    ["open at 20 m", OPEN, 20, 2 ** 0.2],
    ["open, low", OPEN, 2, 0.9],
    ["rough at 12 m", ROUGH, 12, 0.7],
    ["rough, low", ROUGH, 5, 0.7],
    ["rough at 24 m", ROUGH, 24, 0.7 * 2 ** 0.3],
  ])("%s", (_, terrain, heightM, factor) => {
    expect(nbcExposure({ ...terrain, heightM })).toBeCloseTo(factor, 9);
  });
});

describe("Abbotsford, 0.44 kPa, open, 6 m: a screw in the end zone", () => {
  const exposure = nbcExposure({ ...OPEN, heightM: 6 });
  const pressurePa = nbcPressure({ ...level, hourlyPa: 440, exposure });
  it("exposure 0.9029", () => {
    expect(exposure).toBeCloseTo(0.9029, 4);
  });

  it("outside −0.83425 kPa, net −1.07261 kPa, factored by 1.4 −1.50165 kPa", () => {
    const net = windNetPressure({ pressurePa, outside: -2.1, inside: 0.6 });
    expect(Math.abs(windNetPressure({ pressurePa, outside: -2.1, inside: 0 }) + 834.25)).toBeLessThan(0.02);
    expect(Math.abs(net + 1072.61)).toBeLessThan(0.02);
    expect(Math.abs(1.4 * net + 1501.65)).toBeLessThan(0.03);
  });
});
