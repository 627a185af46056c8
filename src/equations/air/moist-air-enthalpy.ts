/** The heat content of moist air. */
import { equation } from "../equation.ts";

export interface MoistAir {
  /** Air temperature (°C). */
  readonly airC: number;
  /** Water vapour to dry air (kg/kg). */
  readonly humidityRatio: number;
}

/** Enthalpy (kJ per kg of dry air). */
export function moistAirEnthalpy({ airC, humidityRatio }: MoistAir): number {
  return 1.006 * airC + humidityRatio * (2501 + 1.86 * airC);
}

export const MOIST_AIR_ENTHALPY = equation({
  name: "moist-air-enthalpy",
  formula: "1.006·airC + humidityRatio·(2501 + 1.86·airC)",
  inputs: [
    { key: "airC", unit: "°C", range: [-60, 80] },
    { key: "humidityRatio", unit: "kg/kg", range: [0, 1] },
  ],
  result: { unit: "kJ/kg" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equation 30" },
  work: moistAirEnthalpy,
});
