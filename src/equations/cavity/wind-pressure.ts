/** What wind adds between two openings of a wall. */
import { equation } from "../equation.ts";

export interface WindOnOpenings {
  /** Difference of the pressure coefficients at inlet and outlet: the user’s assumption. */
  readonly coefficientDifference: number;
  /** Density of air (kg/m³). */
  readonly densityKgPerM3: number;
  /** Wind at the wall (m/s). */
  readonly windMPerS: number;
}

/** Pressure (Pa). */
export function windPressure({ coefficientDifference, densityKgPerM3, windMPerS }: WindOnOpenings): number {
  return coefficientDifference * 0.5 * densityKgPerM3 * windMPerS ** 2;
}

export const WIND_PRESSURE = equation({
  name: "wind-pressure",
  formula: "coefficientDifference · 0.5 · densityKgPerM3 · windMPerS²",
  inputs: [
    { key: "coefficientDifference", unit: "1", range: [-3, 3] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.6] },
    { key: "windMPerS", unit: "m/s", range: [0, 60] },
  ],
  result: { unit: "Pa" },
  source: { document: "Dynamic pressure; the coefficients are the user’s" },
  work: windPressure,
});
