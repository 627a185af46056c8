/** The room that moist air takes. */

import { equation } from "../equation.ts";
import { ZERO_C } from "./air-density.ts";

export interface MoistAirUnderPressure {
  /** Air temperature (°C). */
  readonly airC: number;
  /** Water vapour to dry air (kg/kg). */
  readonly humidityRatio: number;
  /** Air pressure (Pa). */
  readonly pressurePa: number;
}

/** Volume (m³ per kg of dry air). */
export function moistAirVolume({ airC, humidityRatio, pressurePa }: MoistAirUnderPressure): number {
  return (287.042 * (airC + ZERO_C) * (1 + 1.607858 * humidityRatio)) / pressurePa;
}

export const MOIST_AIR_VOLUME = equation({
  name: "moist-air-volume",
  formula: "287.042 · (airC + 273.15) · (1 + 1.607858·humidityRatio) / pressurePa",
  inputs: [
    { key: "airC", unit: "°C", range: [-60, 80] },
    { key: "humidityRatio", unit: "kg/kg", range: [0, 1] },
    { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
  ],
  result: { unit: "m³/kg" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equation 26" },
  work: moistAirVolume,
});
