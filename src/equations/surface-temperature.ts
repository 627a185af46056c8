/** The temperature that a sunlit surface comes to: the sol-air temperature. An upper bound for a ventilated sheet. */
import { equation } from "./equation.ts";

export interface SunlitSurface {
  readonly airC: number;
  /** Absorptance over the surface's heat transfer, α/ho (m²K/W): 0.026 light, 0.052 dark. */
  readonly absorptionM2KPerW: number;
  /** Sun on the surface (W/m²). */
  readonly sunWPerM2: number;
  /** Loss to the sky (K): nothing on a wall, 3.9 on a flat roof. */
  readonly skyLossK: number;
}

/** Sol-air temperature (°C). */
export function surfaceTemperature(surface: SunlitSurface): number {
  return surface.airC + surface.absorptionM2KPerW * surface.sunWPerM2 - surface.skyLossK;
}

export const SURFACE_TEMPERATURE = equation({
  name: "surface-temperature",
  formula: "airC + absorptionM2KPerW · sunWPerM2 − skyLossK",
  inputs: [
    { key: "airC", unit: "°C", range: [-60, 60] },
    { key: "absorptionM2KPerW", unit: "m²K/W", range: [0, 0.06] },
    { key: "sunWPerM2", unit: "W/m²", range: [0, 1400] },
    { key: "skyLossK", unit: "K", range: [0, 10] },
  ],
  result: { unit: "°C" },
  source: { document: "ASHRAE, sol-air temperature, as printed in an encyclopaedia" },
  work: surfaceTemperature,
});
