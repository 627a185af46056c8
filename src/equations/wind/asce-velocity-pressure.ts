/** The wind’s pressure at a height in the United States. */
import { equation } from "../equation.ts";

export interface GustPressure {
  /** Gust of three seconds (m/s). */
  readonly speedMPerS: number;
  /** Coefficient Kz. */
  readonly exposure: number;
  /** Factor Kzt: 1 where no hill stands. */
  readonly topography: number;
  /** Factor Kd: 0.85. */
  readonly directionality: number;
  /** Factor Ke. */
  readonly elevation: number;
}

/** Pressure (Pa). */
export function asceVelocityPressure({
  speedMPerS,
  exposure,
  topography,
  directionality,
  elevation,
}: GustPressure): number {
  return 0.613 * exposure * topography * directionality * elevation * speedMPerS ** 2;
}

export const ASCE_VELOCITY_PRESSURE = equation({
  name: "asce-velocity-pressure",
  formula: "0.613 · exposure · topography · directionality · elevation · speedMPerS²",
  inputs: [
    { key: "speedMPerS", unit: "m/s", range: [10, 120] },
    { key: "exposure", unit: "1", range: [0.3, 2.5] },
    { key: "topography", unit: "1", range: [1, 4] },
    { key: "directionality", unit: "1", range: [0.5, 1] },
    { key: "elevation", unit: "1", range: [0.5, 1.05] },
  ],
  result: { unit: "Pa" },
  source: { document: "ASCE 7-16", clause: "Equation 26.10-1.si" },
  work: asceVelocityPressure,
});
