/**
 * Where the sun stands, against the worked example of the Solar Position Algorithm (Reda and Andreas, NREL/TP-560-34302,
 * appendix A.5): 17 October 2003, 12:30:30 at UTC − 7 h, 39.742476° N, 105.1786° W. The almanac's formula is good to
 * 0.01°; the elevation there is told without refraction.
 */
import { expect, it } from "vitest";
import { sunAzimuth } from "../../src/equations/light/sun-azimuth.ts";
import { sunDirection } from "../../src/equations/light/sun-direction.ts";
import { sunElevation } from "../../src/equations/light/sun-elevation.ts";

/** Julian date less 2 451 545. */
const daysFromJ2000 = 2_452_930.312847 - 2_451_545;
const at = { latitudeDeg: 39.742476, longitudeDeg: -105.1786, daysFromJ2000 };

it("elevation 39.872046°, azimuth 194.34024°", () => {
  expect(Math.abs(sunElevation(at) - 39.872046)).toBeLessThan(0.01);
  expect(Math.abs(sunAzimuth(at) - 194.34024)).toBeLessThan(0.01);
});

it("declination −9.31434°: at the pole the sun's height is its declination", () => {
  expect(Math.abs(sunElevation({ ...at, latitudeDeg: 90 }) + 9.31434)).toBeLessThan(0.01);
});

it("hour angle 11.1059°: on the equator the azimuth of a sun with the declination and the hour angle", () => {
  const { east, up } = sunDirection({ ...at, latitudeDeg: 0 });
  expect(Math.abs((Math.atan2(-east, up) * 180) / Math.PI - 11.1059)).toBeLessThan(0.01);
});

it("latitude and longitude swapped are another sky", () => {
  const swapped = { ...at, latitudeDeg: -74.2, longitudeDeg: 39.742476 };
  expect(Math.abs(sunElevation(swapped) - sunElevation(at))).toBeGreaterThan(1);
});
