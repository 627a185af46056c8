/**
 * The clear sky of Bird and Hulstrom against the model's own spreadsheet, as test data of an open solar library print it:
 * ozone 0.3 cm, water 1.5 cm, optical depths 0.15 and 0.1, forward share 0.85, ground 0.2. And Haurwitz's level light at
 * 30°, 487.894 of the same library's tests.
 */
import { describe, expect, it } from "vitest";
import { airMass } from "../../src/equations/light/air-mass.ts";
import { clearSky } from "../../src/equations/light/clear-sky.ts";
import { clearSkyRough } from "../../src/equations/light/clear-sky-rough.ts";
import { extraterrestrialBeam } from "../../src/equations/light/extraterrestrial-beam.ts";

const AIR = {
  ozoneCm: 0.3,
  waterCm: 1.5,
  haze380: 0.15,
  haze500: 0.1,
  forwardShare: 0.85,
  groundShare: 0.2,
};

/** Day, zenith, air mass, direct beam, global and diffuse on level ground, at 1013.25 mbar. */
const SEA_LEVEL: readonly (readonly [number, number, number, number, number, number])[] = [
  [1, 80.20294173, 5.686327629, 471.3212064, 133.8416817, 53.64163209],
  [1, 72.42741639, 3.276939815, 663.3221901, 279.163603, 78.89683889],
  [1, 66.6756093, 2.510348266, 749.527781, 387.075664, 90.30962051],
  [1, 63.52421726, 2.232516123, 785.1931027, 445.238724, 95.18366105],
  [1, 63.37408378, 2.220958083, 786.7361393, 447.9847462, 95.39767619],
  [1, 66.24612178, 2.468060233, 754.7863934, 395.0556164, 91.02045783],
  [1, 71.76918233, 3.164812862, 674.9482989, 291.5737493, 80.41830715],
  [1, 79.37350428, 5.271396127, 498.0092659, 149.0503955, 57.2139872],
  [1, 88.49628624, 22.46540139, 122.4779341, 6.494832539, 3.280638294],
  [2, 63.45821994, 2.227418742, 785.8875769, 446.4544338, 95.27969215],
  [2, 79.24787601, 5.213740329, 501.9008753, 151.3675632, 57.73213099],
];

describe.each(SEA_LEVEL)("day %d, zenith %d°", (dayOfYear, zenithDeg, mass, beam, level, sky) => {
  it("air mass", () => {
    // The sheet turns degrees into radians by a rounded number, which shows at the horizon.
    expect(Math.abs(airMass({ zenithDeg }) / mass - 1)).toBeLessThan(5e-5);
  });

  it("beam, level and sky", () => {
    const light = clearSky({
      ...AIR,
      zenithDeg,
      pressureMbar: 1013.25,
      outsideWPerM2: extraterrestrialBeam({ dayOfYear, solarConstantWPerM2: 1367 }),
    });
    expect(Math.abs(light.beam - beam)).toBeLessThan(0.1);
    expect(Math.abs(light.level - level)).toBeLessThan(0.1);
    expect(Math.abs(light.sky - sky)).toBeLessThan(0.1);
  });
});

it("at 840 mbar: 805.17, 450.22 and 91.25 W/m²", () => {
  const air = { ...AIR, zenithDeg: 63.52421726, outsideWPerM2: 1414.91335 };
  const light = clearSky({ ...air, pressureMbar: 840 });
  expect(Math.abs(light.beam - 805.171223)).toBeLessThan(0.05);
  expect(Math.abs(light.level - 450.215507)).toBeLessThan(0.05);
  expect(Math.abs(light.sky - 91.25379149)).toBeLessThan(0.05);
});

it("sunlight outside the air through the first days of the year", () => {
  const printed = [1414.91335, 1414.939579, 1414.950771, 1414.94692, 1414.928028, 1414.894099, 1414.845147];
  printed.forEach((value, i) => {
    expect(extraterrestrialBeam({ dayOfYear: i + 1, solarConstantWPerM2: 1367 })).toBeCloseTo(value, 4);
  });
});

it("Haurwitz at 30°: 487.894 W/m² of a sun 30° high", () => {
  expect(clearSkyRough({ zenithDeg: 60 })).toBeCloseTo(487.894, 1);
});
