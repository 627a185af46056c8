/** The dynamic viscosity of air. */

import { equation } from "../equation.ts";
import { ZERO_C } from "./air-density.ts";

export interface WarmAir {
  /** Air temperature (°C). */
  readonly airC: number;
}

/** Viscosity (Pa·s). */
export function airViscosity({ airC }: WarmAir): number {
  const kelvin = airC + ZERO_C;
  return (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
}

export const AIR_VISCOSITY = equation({
  name: "air-viscosity",
  formula: "1.458e-6 · T^1.5 / (T + 110.4), T = airC + 273.15",
  inputs: [{ key: "airC", unit: "°C", range: [-60, 80] }],
  result: { unit: "Pa·s" },
  source: { document: "U.S. Standard Atmosphere, 1976", clause: "Sutherland’s equation" },
  work: airViscosity,
});
