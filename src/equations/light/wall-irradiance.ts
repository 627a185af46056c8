/** Light on a bare upright wall: beam, half of the sky, half of the ground. The sky is taken as equally bright all over. */
import { equation } from "../equation.ts";

export interface WallLight {
  /** Across the sun's beam (W/m²). */
  readonly beamWPerM2: number;
  /** From the sky on level ground (W/m²). */
  readonly skyWPerM2: number;
  /** Beam and sky on level ground (W/m²). */
  readonly levelWPerM2: number;
  /** Cosine between the beam and the wall's normal. */
  readonly incidence: number;
  /** Share of light that the ground throws back. */
  readonly groundShare: number;
}

/** W/m². */
export function wallIrradiance(light: WallLight): number {
  return (
    light.beamWPerM2 * Math.max(0, light.incidence) +
    light.skyWPerM2 / 2 +
    (light.groundShare * light.levelWPerM2) / 2
  );
}

export const WALL_IRRADIANCE = equation({
  name: "wall-irradiance",
  formula: "beamWPerM2 · max(0, incidence) + skyWPerM2/2 + groundShare · levelWPerM2/2",
  inputs: [
    { key: "beamWPerM2", unit: "W/m²", range: [0, 1400] },
    { key: "skyWPerM2", unit: "W/m²", range: [0, 1000] },
    { key: "levelWPerM2", unit: "W/m²", range: [0, 1500] },
    { key: "incidence", unit: "1", range: [-1, 1] },
    { key: "groundShare", unit: "1", range: [0, 1] },
  ],
  result: { unit: "W/m²" },
  source: { document: "Liu and Jordan, equally bright sky and ground, Solar Energy 7 (1963)" },
  work: wallIrradiance,
});
