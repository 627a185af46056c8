/** The most water that the air of a cavity can carry away: a bound, for evaporation is mostly slower. */
import { equation } from "../equation.ts";

const SECONDS_PER_DAY = 86_400;

export interface DryingAir {
  /** Density of air (kg/m³). */
  readonly densityKgPerM3: number;
  /** Depth of the cavity (m). */
  readonly depthM: number;
  /** Mean speed (m/s). */
  readonly speedMPerS: number;
  /** Humidity ratio at the outlet (kg/kg). */
  readonly leavingRatio: number;
  /** Humidity ratio outside (kg/kg). */
  readonly enteringRatio: number;
}

/** Water (kg a day per metre of wall). */
export function dryingBound({
  densityKgPerM3,
  depthM,
  speedMPerS,
  leavingRatio,
  enteringRatio,
}: DryingAir): number {
  return densityKgPerM3 * depthM * speedMPerS * (leavingRatio - enteringRatio) * SECONDS_PER_DAY;
}

export const DRYING_BOUND = equation({
  name: "drying-bound",
  formula: "densityKgPerM3·depthM·speedMPerS·(leavingRatio − enteringRatio)·86400",
  inputs: [
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.6] },
    { key: "depthM", unit: "m", range: [0.001, 0.5] },
    { key: "speedMPerS", unit: "m/s", range: [0, 20] },
    { key: "leavingRatio", unit: "kg/kg", range: [0, 0.1] },
    { key: "enteringRatio", unit: "kg/kg", range: [0, 0.1] },
  ],
  result: { unit: "kg/day·m" },
  source: { document: "Own mass balance" },
  work: dryingBound,
});
