/** The ultraviolet part of light: a clear sky has about four times the beam's share, so each is weighed by its own. */
import { equation } from "../equation.ts";

export interface LightParts {
  readonly beamWPerM2: number;
  readonly skyWPerM2: number;
  /** Ultraviolet share of the beam and of the sky's light, 0 to 1. */
  readonly beamUvShare: number;
  readonly skyUvShare: number;
}

/** W/m² of ultraviolet. */
export function uvIrradiance(light: LightParts): number {
  return light.beamUvShare * light.beamWPerM2 + light.skyUvShare * light.skyWPerM2;
}

export const UV_IRRADIANCE = equation({
  name: "uv-irradiance",
  formula: "beamUvShare · beamWPerM2 + skyUvShare · skyWPerM2",
  inputs: [
    { key: "beamWPerM2", unit: "W/m²", range: [0, 1400] },
    { key: "skyWPerM2", unit: "W/m²", range: [0, 1000] },
    { key: "beamUvShare", unit: "1", range: [0, 0.3] },
    { key: "skyUvShare", unit: "1", range: [0, 0.3] },
  ],
  result: { unit: "W/m²" },
  source: { document: "Shares of the ASTM G173 reference spectra, 280 to 400 nm" },
  work: uvIrradiance,
});
