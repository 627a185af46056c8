/** The compass direction of the sun. */
import { equation } from "../equation.ts";
import { type PlaceAndTime, SUN_INPUTS, SUN_SOURCE, SUN_STEPS, sunDirection } from "./sun-direction.ts";

/** Degrees clockwise from north, 0 to 360. */
export function sunAzimuth(at: PlaceAndTime): number {
  const { east, north } = sunDirection(at);
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
}

export const SUN_AZIMUTH = equation({
  name: "sun-azimuth",
  formula: `atan2(−cos δ · sin H, cos latitudeDeg · sin δ − sin latitudeDeg · cos δ · cos H); ${SUN_STEPS}`,
  inputs: SUN_INPUTS,
  result: { unit: "°" },
  source: SUN_SOURCE,
  work: sunAzimuth,
});
