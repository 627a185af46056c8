/** The pressure of gusts at a height in Europe, on level ground. */
import { equation } from "../equation.ts";
import { enBasicPressure } from "./en-basic-pressure.ts";
import { enRoughness } from "./en-roughness.ts";
import { enTurbulence } from "./en-turbulence.ts";

export interface GustHeight {
  /** Basic wind: ten minutes at 10 m over grass (m/s). */
  readonly speedMPerS: number;
  /** Of air: 1.25 (kg/m³). */
  readonly densityKgPerM3: number;
  /** Height above ground (m). */
  readonly heightM: number;
  /** Of the terrain (m). */
  readonly roughnessM: number;
  /** Below this height the factor stays: 1, 1, 2, 5, 10 (m). */
  readonly leastHeightM: number;
}

/** Pressure (Pa). */
export function enPeakPressure({ speedMPerS, densityKgPerM3, ...terrain }: GustHeight): number {
  const basic = enBasicPressure({ speedMPerS, densityKgPerM3 });
  return (1 + 7 * enTurbulence(terrain)) * basic * enRoughness(terrain) ** 2;
}

export const EN_PEAK_PRESSURE = equation({
  name: "en-peak-pressure",
  formula: "(1 + 7·Iv) · densityKgPerM3·speedMPerS²/2 · cr², Iv and cr at heightM, roughnessM, leastHeightM",
  inputs: [
    { key: "speedMPerS", unit: "m/s", range: [10, 80] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.4] },
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "roughnessM", unit: "m", range: [0.001, 3] },
    { key: "leastHeightM", unit: "m", range: [0.5, 30] },
  ],
  result: { unit: "Pa" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.5, Equation 4.8" },
  work: enPeakPressure,
});
