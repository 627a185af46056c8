/** Water vapour carried by a kilogram of dry air. */
import { equation } from "../equation.ts";

export interface VapourInAir {
  /** Vapour pressure (Pa). */
  readonly vapourPa: number;
  /** Air pressure (Pa). */
  readonly pressurePa: number;
}

/** Humidity ratio (kg/kg). */
export function humidityRatio({ vapourPa, pressurePa }: VapourInAir): number {
  return (0.621945 * vapourPa) / (pressurePa - vapourPa);
}

export const HUMIDITY_RATIO = equation({
  name: "humidity-ratio",
  formula: "0.621945 · vapourPa / (pressurePa − vapourPa)",
  inputs: [
    { key: "vapourPa", unit: "Pa", range: [0, 40_000] },
    { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
  ],
  result: { unit: "kg/kg" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equation 20" },
  work: humidityRatio,
});
