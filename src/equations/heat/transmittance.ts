/** The transmittance of a wall from the two limits of its resistance, with what fasteners add. */
import { equation } from "../equation.ts";

export interface WallLimits {
  /** Upper and lower limit of the total resistance (m²K/W). */
  readonly upperM2KPerW: number;
  readonly lowerM2KPerW: number;
  /** By fasteners and the like; under 3 % of the whole it need not be counted (W/m²K). */
  readonly addedWPerM2K: number;
}

/** Transmittance U (W/m²K). */
export function transmittance({ upperM2KPerW, lowerM2KPerW, addedWPerM2K }: WallLimits): number {
  return 2 / (upperM2KPerW + lowerM2KPerW) + addedWPerM2K;
}

export const TRANSMITTANCE = equation({
  name: "transmittance",
  formula: "2/(upperM2KPerW + lowerM2KPerW) + addedWPerM2K",
  inputs: [
    { key: "upperM2KPerW", unit: "m²K/W", range: [0.01, 60] },
    { key: "lowerM2KPerW", unit: "m²K/W", range: [0.01, 60] },
    { key: "addedWPerM2K", unit: "W/m²K", range: [0, 1] },
  ],
  result: { unit: "W/m²K" },
  source: { document: "ISO 6946", clause: "Combined method" },
  work: transmittance,
});
