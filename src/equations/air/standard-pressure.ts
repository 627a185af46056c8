/** The pressure of the standard atmosphere at a height. */
import { equation } from "../equation.ts";

export interface StandardAir {
  /** Height above the sea (m). */
  readonly altitudeM: number;
}

/** Pressure (Pa). */
export function standardPressure({ altitudeM }: StandardAir): number {
  return 101_325 * (1 - 2.25577e-5 * altitudeM) ** 5.2559;
}

export const STANDARD_PRESSURE = equation({
  name: "standard-pressure",
  formula: "101325 · (1 − 2.25577e-5 · altitudeM)^5.2559",
  inputs: [{ key: "altitudeM", unit: "m", range: [-500, 11_000] }],
  result: { unit: "Pa" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equation 3" },
  work: standardPressure,
});
