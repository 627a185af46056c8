/** The pressure of the basic wind in Europe. */
import { equation } from "../equation.ts";

export interface BasicWind {
  /** Basic wind: ten minutes at 10 m over grass (m/s). */
  readonly speedMPerS: number;
  /** Of air: 1.25 (kg/m³). */
  readonly densityKgPerM3: number;
}

/** Pressure (Pa). */
export function enBasicPressure({ speedMPerS, densityKgPerM3 }: BasicWind): number {
  return (densityKgPerM3 * speedMPerS ** 2) / 2;
}

export const EN_BASIC_PRESSURE = equation({
  name: "en-basic-pressure",
  formula: "densityKgPerM3 · speedMPerS² / 2",
  inputs: [
    { key: "speedMPerS", unit: "m/s", range: [10, 80] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.4] },
  ],
  result: { unit: "Pa" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.5, Equation 4.10" },
  work: enBasicPressure,
});
