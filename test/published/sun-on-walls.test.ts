/**
 * The sun against upright walls and slots, with values that the tests of an open solar library print: the projection on a
 * surface, and the sun's zenith projected across an axis. Such an axis is level for a level slot and upright for an
 * upright one; the angle is told from the vertical there, from the wall's normal here.
 *
 * On an upright wall the library's sky and ground, DHI (1 + cos 90°)/2 and albedo GHI (1 − cos 90°)/2, are half of each; the
 * values of its own test data (32.2° north, 24 June) are put in. No value printed for an upright wall could be opened.
 *
 * The sunlit height under an overhang, as handbooks on shading size it: a projection of height over the tangent of the
 * profile angle shades all of a window, and one less than that leaves height − projection · tan.
 *
 * And the ultraviolet of ASTM G173: 280 to 400 nm are 4.61 % of the 1000.4 W/m² on a surface at 37°, which meets a beam of
 * 900.1 W/m² at 11.2°.
 */
import { describe, expect, it } from "vitest";
import { incidence } from "../../src/equations/light/incidence.ts";
import { litStripeTop } from "../../src/equations/light/lit-stripe.ts";
import { profileAngleLevel, profileAngleUpright } from "../../src/equations/light/profile-angle.ts";
import { slotBeamShare } from "../../src/equations/light/slot-beam-share.ts";
import { uvIrradiance } from "../../src/equations/light/uv-irradiance.ts";
import { wallIrradiance } from "../../src/equations/light/wall-irradiance.ts";

describe("on a wall that looks north, sun 60° high", () => {
  it.each([
    [60, 0.25],
    [170, -0.4924038],
  ])("at azimuth %d°: projection %d", (azimuthDeg, printed) => {
    expect(incidence({ elevationDeg: 60, azimuthDeg, wallAzimuthDeg: 0 })).toBeCloseTo(printed, 6);
  });
});

describe("zenith projected across a level axis from north to south", () => {
  it.each([
    // zenith, azimuth, printed angle from the vertical, towards the west
    [45, 90, -45],
    [45, 270, 45],
    [60, 90, -60],
  ])("zenith %d°, azimuth %d°: %d°", (zenithDeg, azimuthDeg, printed) => {
    const wallAzimuthDeg = printed < 0 ? 90 : 270;
    const sun = { elevationDeg: 90 - zenithDeg, azimuthDeg, wallAzimuthDeg };
    expect(profileAngleLevel(sun)).toBeCloseTo(90 - Math.abs(printed), 9);
  });
});

describe("zenith projected across an upright axis", () => {
  it.each([
    // azimuth, the wall's, printed angle
    [90, 180, -90],
    [270, 180, 90],
    [90, 0, 90],
    [270, 0, -90],
    [45, 180, -135],
    [315, 180, 135],
  ])("azimuth %d°, wall %d°: %d°", (azimuthDeg, wallAzimuthDeg, printed) => {
    expect(profileAngleUpright({ elevationDeg: 45, azimuthDeg, wallAzimuthDeg })).toBeCloseTo(printed, 9);
  });
});

it("ultraviolet: 4.61 % of the reference spectrum's whole light", () => {
  const beamWPerM2 = 900.1 * Math.cos((11.2 * Math.PI) / 180);
  const uv = uvIrradiance({
    beamWPerM2,
    skyWPerM2: 1000.4 - beamWPerM2,
    beamUvShare: 0.0339,
    skyUvShare: 0.138,
  });
  expect(Math.abs((100 * uv) / 1000.4 - 4.61)).toBeLessThan(0.02);
});

describe("an upright wall that looks west", () => {
  it.each([
    // zenith, azimuth, level, beam and sky as the library's test data print them
    [82.85457044, 66.71410338, 79.73860422, 316.1949056, 40.46149818],
    [10.56413562, 144.76567754, 1042.48031487, 939.95469881, 118.45831879],
    [72.41687122, 287.04104128, 257.20751138, 646.22886049, 62.03376265],
  ])(
    "zenith %d°, azimuth %d°: %d, %d and %d W/m²",
    (zenithDeg, azimuthDeg, levelWPerM2, beamWPerM2, skyWPerM2) => {
      const radians = Math.PI / 180;
      // The library's projection, sin Z · sin tilt · cos(A − wall), with the tilt of 90° put in.
      const projection = Math.sin(zenithDeg * radians) * Math.cos((azimuthDeg - 270) * radians);
      const printed = beamWPerM2 * Math.max(0, projection) + 0.5 * skyWPerM2 + 0.25 * 0.5 * levelWPerM2;
      const sun = incidence({ elevationDeg: 90 - zenithDeg, azimuthDeg, wallAzimuthDeg: 270 });
      expect(
        wallIrradiance({ beamWPerM2, skyWPerM2, levelWPerM2, incidence: sun, groundShare: 0.25 }),
      ).toBeCloseTo(printed, 6);
    },
  );
});

describe("a slot with square edges, as a window under an overhang", () => {
  const square = { bevelDeg: 0, cavityMm: 0 };
  it.each([
    [30, 1200],
    [45, 800],
    [75, 100],
  ])("profile angle %d°, height %d: shaded whole by height over tangent", (profileDeg, gapMm) => {
    const thicknessMm = gapMm / Math.tan((profileDeg * Math.PI) / 180);
    expect(litStripeTop({ ...square, gapMm, thicknessMm, profileDeg })).toBeCloseTo(0, 9);
    expect(slotBeamShare({ gapMm, thicknessMm, bevelDeg: 0, profileDeg })).toBeCloseTo(0, 9);
  });

  it("a projection of 2 under a profile angle of 75° throws a shadow of 7.5, in a window of 10", () => {
    const lit = { ...square, gapMm: 10, thicknessMm: 2, profileDeg: 75 };
    expect(10 - litStripeTop(lit)).toBeCloseTo(7.46, 2);
  });
});
