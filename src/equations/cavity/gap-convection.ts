/** Heat that a wall of a ventilated gap gives to the air that passes. */
import { equation } from "../equation.ts";

export interface GapAir {
  /** Coefficient with the air at rest (W/m²K). */
  readonly stillWPerM2K: number;
  /** Mean speed (m/s). */
  readonly speedMPerS: number;
}

/** Coefficient (W/m²K). */
export function gapConvection({ stillWPerM2K, speedMPerS }: GapAir): number {
  return 2 * stillWPerM2K + 4 * speedMPerS;
}

export const GAP_CONVECTION = equation({
  name: "gap-convection",
  formula: "2·stillWPerM2K + 4·speedMPerS",
  inputs: [
    { key: "stillWPerM2K", unit: "W/m²K", range: [0, 10] },
    { key: "speedMPerS", unit: "m/s", range: [0, 20] },
  ],
  result: { unit: "W/m²K" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: gapConvection,
});
