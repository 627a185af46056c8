/** How high the sun's centre stands, refraction left out. */
import { equation } from "../equation.ts";
import { type PlaceAndTime, SUN_INPUTS, SUN_SOURCE, SUN_STEPS, sunDirection } from "./sun-direction.ts";

/** Degrees above the horizon, −90 to 90. */
export function sunElevation(at: PlaceAndTime): number {
  return (Math.asin(sunDirection(at).up) * 180) / Math.PI;
}

export const SUN_ELEVATION = equation({
  name: "sun-elevation",
  formula: `asin(sin latitudeDeg · sin δ + cos latitudeDeg · cos δ · cos H); ${SUN_STEPS}`,
  inputs: SUN_INPUTS,
  result: { unit: "°" },
  source: SUN_SOURCE,
  work: sunElevation,
});
