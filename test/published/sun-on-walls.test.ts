/**
 * The sun against upright walls and slots, with values that the tests of an open solar library print: the projection on a
 * surface, and the sun's zenith projected across an axis. Such an axis is level for a level slot and upright for an
 * upright one; the angle is told from the vertical there, from the wall's normal here.
 *
 * And the ultraviolet of ASTM G173: 280 to 400 nm are 4.61 % of the 1000.4 W/m² on a surface at 37°, which meets a beam of
 * 900.1 W/m² at 11.2°.
 */
import { describe, expect, it } from "vitest";
import { incidence } from "../../src/equations/light/incidence.ts";
import { profileAngleLevel, profileAngleUpright } from "../../src/equations/light/profile-angle.ts";
import { uvIrradiance } from "../../src/equations/light/uv-irradiance.ts";

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
