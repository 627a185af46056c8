/** The height over which air in a gap takes up most of the walls’ warmth. */
import { equation } from "../equation.ts";

/** Specific heat of air (J/kgK). */
const HEAT_OF_AIR = 1006;

export interface WarmingAir {
  /** Density of air (kg/m³). */
  readonly densityKgPerM3: number;
  /** Depth of the cavity (m). */
  readonly depthM: number;
  /** Mean speed (m/s). */
  readonly speedMPerS: number;
  /** From one wall to the air (W/m²K). */
  readonly convectionWPerM2K: number;
}

/** Length (m). */
export function gapLength({ densityKgPerM3, depthM, speedMPerS, convectionWPerM2K }: WarmingAir): number {
  return (densityKgPerM3 * HEAT_OF_AIR * depthM * speedMPerS) / (2 * convectionWPerM2K);
}

export const GAP_LENGTH = equation({
  name: "gap-length",
  formula: "densityKgPerM3·1006·depthM·speedMPerS / (2·convectionWPerM2K)",
  inputs: [
    { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.6] },
    { key: "depthM", unit: "m", range: [0.001, 0.5] },
    { key: "speedMPerS", unit: "m/s", range: [0, 20] },
    { key: "convectionWPerM2K", unit: "W/m²K", range: [0.1, 100] },
  ],
  result: { unit: "m" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: gapLength,
});
