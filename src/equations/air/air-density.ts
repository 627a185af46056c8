/** The density of dry air. */
import { equation } from "../equation.ts";

/** Of dry air (J/kgK). */
export const GAS_CONSTANT = 287.055;
/** Kelvin at nought degrees Celsius. */
export const ZERO_C = 273.15;

export interface DryAir {
  /** Air pressure (Pa). */
  readonly pressurePa: number;
  /** Air temperature (°C). */
  readonly airC: number;
}

/** Density (kg/m³). */
export function airDensity({ pressurePa, airC }: DryAir): number {
  return pressurePa / (GAS_CONSTANT * (airC + ZERO_C));
}

export const AIR_DENSITY = equation({
  name: "air-density",
  formula: "pressurePa / (287.055 · (airC + 273.15))",
  inputs: [
    { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
    { key: "airC", unit: "°C", range: [-60, 80] },
  ],
  result: { unit: "kg/m³" },
  source: { document: "U.S. Standard Atmosphere, 1976", clause: "Perfect gas, 287.055 J/kgK" },
  work: airDensity,
});
