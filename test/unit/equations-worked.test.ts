/** Equations for which no published value was found, worked another way: by sums over a hemisphere, by rays, by plain vectors. */
import { describe, expect, it } from "vitest";
import { equivalentInlet } from "../../src/equations/cavity/equivalent-inlet.ts";
import { litStripeTop } from "../../src/equations/light/lit-stripe.ts";
import { profileAngleLevel } from "../../src/equations/light/profile-angle.ts";
import { wallIrradiance } from "../../src/equations/light/wall-irradiance.ts";

const RADIANS = Math.PI / 180;

it("wall-irradiance: sky and ground of one radiance, summed over the half space before the wall", () => {
  const [skyWPerM2, levelWPerM2, groundShare] = [120, 640, 0.3];
  const steps = 400;
  const cell = (Math.PI / steps) ** 2;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const up = Math.PI * ((i + 0.5) / steps - 0.5);
    for (let k = 0; k < steps; k++) {
      const aside = Math.PI * ((k + 0.5) / steps - 0.5);
      const radiance = (up > 0 ? skyWPerM2 : groundShare * levelWPerM2) / Math.PI;
      sum += radiance * Math.cos(up) * Math.cos(aside) * Math.cos(up) * cell;
    }
  }
  const light = { beamWPerM2: 0, incidence: 0, skyWPerM2, levelWPerM2, groundShare };
  expect(Math.abs(wallIrradiance(light) / sum - 1)).toBeLessThan(1e-4);
  expect(wallIrradiance({ ...light, beamWPerM2: 500, incidence: 0.4 }) - wallIrradiance(light)).toBeCloseTo(
    200,
    9,
  );
});

describe("profile-angle-level: the sun's direction laid on the plane across the slot", () => {
  it.each([
    [25, 140, 172],
    [50, 230, 172],
    [12, 100, 172],
    [-8, 200, 262],
  ])("elevation %d°, azimuth %d°, wall %d°", (elevationDeg, azimuthDeg, wallAzimuthDeg) => {
    const flat = Math.cos(elevationDeg * RADIANS);
    const sun = [flat * Math.sin(azimuthDeg * RADIANS), flat * Math.cos(azimuthDeg * RADIANS)] as const;
    const wall = [Math.sin(wallAzimuthDeg * RADIANS), Math.cos(wallAzimuthDeg * RADIANS)] as const;
    const out = sun[0] * wall[0] + sun[1] * wall[1];
    const expected = Math.atan2(Math.sin(elevationDeg * RADIANS), out) / RADIANS;
    expect(profileAngleLevel({ elevationDeg, azimuthDeg, wallAzimuthDeg })).toBeCloseTo(expected, 9);
  });
});

describe("lit-stripe-top: the highest of many rays that pass the slot", () => {
  it.each([
    [10, 20, 0, 30, 20],
    [12, 20, 15, 27, 10],
    [12, 20, 30, 27, -25],
    [8, 8, 0, 39, 40],
  ])(
    "slot %d/%d mm at %d°, cavity %d mm, sun at %d°",
    (gapMm, thicknessMm, bevelDeg, cavityMm, profileDeg) => {
      const fall = Math.tan(profileDeg * RADIANS);
      const rise = thicknessMm * Math.tan(bevelDeg * RADIANS);
      let top = Number.NEGATIVE_INFINITY;
      for (let front = 0; front <= gapMm; front += gapMm / 20_000) {
        const back = front - thicknessMm * fall;
        if (back >= rise && back <= rise + gapMm) top = Math.max(top, back - cavityMm * fall);
      }
      expect(top).toBeGreaterThan(Number.NEGATIVE_INFINITY);
      expect(litStripeTop({ gapMm, thicknessMm, bevelDeg, cavityMm, profileDeg })).toBeCloseTo(top, 2);
    },
  );
});

describe("equivalent-inlet: what each opening stands for", () => {
  it("without joints the near end alone", () => {
    expect(equivalentInlet({ nearM: 0.02, farM: 0.01, jointsM: 0 })).toBe(0.02);
  });

  it("with ends alike a quarter of the joints lets in on the way, by half of half the height", () => {
    expect(equivalentInlet({ nearM: 0.01, farM: 0.01, jointsM: 0.08 })).toBeCloseTo(0.03, 12);
  });

  it("with a far end that is much the wider half of the joints lets in, with a much narrower one none", () => {
    expect(equivalentInlet({ nearM: 1e-6, farM: 0.5, jointsM: 0.08 })).toBeCloseTo(0.04, 5);
    expect(equivalentInlet({ nearM: 0.5, farM: 1e-6, jointsM: 0.08 })).toBeCloseTo(0.5, 5);
  });
});
