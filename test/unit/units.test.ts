import { describe, expect, it } from "vitest";
import { degreesToRadians, normaliseDegrees, radiansToDegrees } from "../../src/units/angle.ts";
import { parseLength, printLength } from "../../src/units/feet-inch.ts";
import {
  fromGridSteps,
  GRID_MM,
  MM_PER_INCH,
  sameLength,
  snap,
  toGridSteps,
} from "../../src/units/length.ts";
import { cutLengthMm, gapMm, positionMm } from "../../src/units/rounding.ts";

describe("the length grid", () => {
  it("holds the millimetre and 1/64 inch whole", () => {
    expect(GRID_MM).toBe(0.000125);
    expect(toGridSteps(1)).toBe(8000);
    // 25.4 mm / 64 = 0.396875 mm = 3175 / 8000 mm, exactly
    expect(toGridSteps(MM_PER_INCH / 64)).toBe(3175);
    expect(snap(MM_PER_INCH / 64)).toBe(0.396875);
  });

  it("takes the nearest grid length and never returns -0", () => {
    expect(snap(0.1 + 0.2)).toBe(0.3);
    expect(snap(1.00007)).toBe(1.000125);
    expect(snap(-1.00007)).toBe(-1.000125);
    expect(Object.is(snap(-0.00001), 0)).toBe(true);
    expect(Object.is(snap(-0), 0)).toBe(true);
    expect(Object.is(fromGridSteps(-0), 0)).toBe(true);
  });

  it("compares on the grid", () => {
    expect(sameLength(0.1 + 0.2, 0.3)).toBe(true);
    expect(sameLength(1, 1.000125)).toBe(false);
  });
});

describe("named roundings", () => {
  it("cuts down, marks to nearest, opens gaps up", () => {
    expect(cutLengthMm(950.9, { step: 1 })).toBe(950);
    expect(positionMm(950.5, { step: 1 })).toBe(951);
    expect(positionMm(950.4, { step: 1 })).toBe(950);
    expect(positionMm(-950.4, { step: 1 })).toBe(-950);
    expect(gapMm(9.01, { step: 0.5 })).toBe(9.5);
  });

  it.each([1e-9, -1e-9])("forgives noise of %d mm", (noise) => {
    expect(cutLengthMm(951 + noise, { step: 1 })).toBe(951);
    expect(gapMm(9 + noise, { step: 0.5 })).toBe(9);
    expect(positionMm(950.5 + noise, { step: 1 })).toBe(951);
    expect(cutLengthMm(0.3 + noise, { step: 0.1 })).toBe(0.3);
    expect(gapMm(0.3 + noise, { step: 0.1 })).toBe(0.3);
  });

  it("works in fractions of an inch", () => {
    expect(cutLengthMm(1000, { step: MM_PER_INCH / 32 })).toBe(snap((1259 * MM_PER_INCH) / 32));
    expect(gapMm(9, { step: MM_PER_INCH / 16 })).toBe(snap((6 * MM_PER_INCH) / 16));
  });
});

describe("angles", () => {
  it("turns degrees into radians and back", () => {
    expect(degreesToRadians(30)).toBeCloseTo(Math.PI / 6, 15);
    expect(radiansToDegrees(degreesToRadians(172))).toBeCloseTo(172, 12);
  });

  it.each([
    [0, 0],
    [360, 0],
    [-90, 270],
    [725, 5],
    [-360, 0],
    [-1e-17, 0],
    [359.5, 359.5],
  ])("normalises %d to %d", (given, expected) => {
    expect(Object.is(normaliseDegrees(given), expected)).toBe(true);
  });
});

describe("printing lengths", () => {
  it.each([
    [950, 1, "950"],
    [95.5, 1, "95.5"],
    [9.0625, 3, "9.063"],
    [-9.0625, 3, "-9.063"],
    [0.0125, 3, "0.013"],
    [-0.004, 2, "0"],
    [1222.5, 0, "1223"],
    [0.000125, 6, "0.000125"],
    [10, 3, "10"],
  ])("%d mm to %d decimals reads %s", (mm, decimals, text) => {
    expect(printLength(mm, { display: "mm", decimals })).toBe(text);
  });

  it("prints the decimal comma", () => {
    expect(printLength(1222.5, { display: "mm", decimalSign: "," })).toBe("1222,5");
  });

  // From one foot on both parts are shown, under it inches only: common practice on North American drawings.
  it.each([
    [10 * 304.8, 16, "10'-0\""],
    [304.8, 16, "1'-0\""],
    [40.5 * MM_PER_INCH, 16, "3'-4 1/2\""],
    [0.625 * MM_PER_INCH, 16, '5/8"'],
    [11.5 * MM_PER_INCH, 16, '11 1/2"'],
    [12.5 * MM_PER_INCH, 16, "1'-0 1/2\""],
    [0, 16, '0"'],
    [-0, 16, '0"'],
  ] as const)("%d mm in 1/%d in reads %s", (mm, denominator, text) => {
    expect(printLength(mm, { display: "feet-inch", denominator })).toBe(text);
  });

  it("rounds the total first, so a carry reaches the feet", () => {
    expect(printLength(5.9999 * 304.8, { display: "feet-inch", denominator: 16 })).toBe("6'-0\"");
    expect(printLength(11.99 * MM_PER_INCH, { display: "feet-inch", denominator: 16 })).toBe("1'-0\"");
    expect(printLength(11.99 * MM_PER_INCH, { display: "feet-inch", denominator: 64 })).toBe('11 63/64"');
  });

  it("has one sign, in front, and none for zero", () => {
    expect(printLength(-40.5 * MM_PER_INCH, { display: "feet-inch" })).toBe("-3'-4 1/2\"");
    expect(printLength(-0.2, { display: "feet-inch", denominator: 16 })).toBe('0"');
    expect(printLength(-0.2, { display: "feet-inch", denominator: 64 })).toBe('-1/64"');
  });

  it("reduces fractions", () => {
    expect(printLength((34 * MM_PER_INCH) / 64, { display: "feet-inch", denominator: 64 })).toBe('17/32"');
    expect(printLength((48 * MM_PER_INCH) / 64, { display: "feet-inch", denominator: 64 })).toBe('3/4"');
  });
});

describe("reading lengths", () => {
  it.each([
    ["950", 950],
    ["950 mm", 950],
    ["950mm", 950],
    ["1 222,5", 1222.5],
    ["1\u00a0222,5 mm", 1222.5],
    ["95.5 cm", 955],
    ["1.2 m", 1200],
    ["1,2 M", 1200],
    [".5", 0.5],
    ["-50", -50],
    ["\u221250", -50],
    ["- 50 mm", -50],
    ["+12", 12],
    ["-0", 0],
    ["40 1/2 in", 1028.7],
    ["40-1/2 in", 1028.7],
    ["40.5 in", 1028.7],
    ["40 1/2 po", 1028.7],
    ['5/8"', 15.875],
    ["5/8 inch", 15.875],
    ["3'-4 1/2\"", 1028.7],
    ["3' 4-1/2\"", 1028.7],
    ["3'4 1/2", 1028.7],
    ["3\u2032-4\u00bd\u2033", 1028.7],
    ["3\u2019 4 1\u20442\u201d", 1028.7],
    ["3' 4\u00bd''", 1028.7],
    ["3'\u00bd\"", 927.1],
    ["3ft 4in", 1016],
    ["3 ft. 4 in.", 1016],
    ["3 pi 4 po", 1016],
    ["3.5 ft", 1066.8],
    ["3 1/2 ft", 1066.8],
    ["3'", 914.4],
    ["-3'-4 1/2\"", -1028.7],
    ["\u22123'-4 1/2\"", -1028.7],
    ['\u00bc"', 6.35],
    ['4\u215c"', 111.125],
    ["1 222 1/2 in", 31051.5],
  ])("%s is %d mm", (text, value) => {
    expect(parseLength(text, "mm")).toEqual({ ok: true, value: snap(value) });
  });

  it("takes bare numbers in the unit it is told", () => {
    expect(parseLength("40 1/2", "in")).toEqual({ ok: true, value: 1028.7 });
    expect(parseLength("3 1/2", "ft")).toEqual({ ok: true, value: 1066.8 });
    expect(parseLength("12", "cm")).toEqual({ ok: true, value: 120 });
    expect(parseLength("12 mm", "in")).toEqual({ ok: true, value: 12 });
  });

  it.each([
    ["", "empty"],
    ["   ", "empty"],
    ["-", "not-a-length"],
    ["--5", "not-a-length"],
    ["wide", "not-a-length"],
    ["1e5", "not-a-length"],
    ["12 mm 3", "not-a-length"],
    ["3' 4 mm", "not-a-length"],
    ["3' -", "not-a-length"],
    ["3'--4\"", "not-a-length"],
    ["NaN", "not-a-length"],
    ["1/", "not-a-length"],
    ["5 furlongs", "unknown-unit"],
    ["1.222,5", "two-decimal-signs"],
    ["1,222.5", "two-decimal-signs"],
    ["1.2.3", "two-decimal-signs"],
    ["12 22", "digits-not-grouped"],
    ["1 2222", "digits-not-grouped"],
    ["1/2", "fraction-needs-inches"],
    ["40 1/2 mm", "fraction-needs-inches"],
    ["5/0 in", "zero-denominator"],
    ["3'-12\"", "inches-carry"],
    ["3 5/4 in", "inches-carry"],
    ["3.5 1/2 in", "inches-carry"],
    ["3.5' 4\"", "part-of-foot-beside-inches"],
    ["3 1/2' 4\"", "part-of-foot-beside-inches"],
    ["9999999 m", "out-of-range"],
  ])("refuses %j as %s", (text, code) => {
    expect(parseLength(text, "mm")).toEqual({ ok: false, error: { code, text } });
  });
});
