/** Terrain factor of a roughness length. */
import { equation } from "../equation.ts";

export interface Roughness {
  /** 0.003 sea, 0.01, 0.05, 0.3, 1 town (m). */
  readonly roughnessM: number;
}

/** Terrain factor. */
export function enTerrainFactor({ roughnessM }: Roughness): number {
  return 0.19 * (roughnessM / 0.05) ** 0.07;
}

export const EN_TERRAIN_FACTOR = equation({
  name: "en-terrain-factor",
  formula: "0.19 · (roughnessM/0.05)^0.07",
  inputs: [{ key: "roughnessM", unit: "m", range: [0.001, 3] }],
  result: { unit: "1" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.3.2, Equation 4.5" },
  work: enTerrainFactor,
});
