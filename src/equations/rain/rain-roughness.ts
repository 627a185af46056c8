/** How terrain and height change driven rain: the roughness coefficient. */
import { equation } from "../equation.ts";

export interface RoughTerrain {
  /** Height above ground (m). */
  readonly heightM: number;
  /** 0.17 open water, 0.19 farmland, 0.22 suburb, 0.24 town. */
  readonly terrainFactor: number;
  /** 0.01, 0.05, 0.3, 1 (m). */
  readonly roughnessM: number;
  /** Below this height the coefficient stays: 2, 4, 8, 16 (m). */
  readonly leastHeightM: number;
}

/** Coefficient. */
export function rainRoughness({ heightM, terrainFactor, roughnessM, leastHeightM }: RoughTerrain): number {
  return terrainFactor * Math.log(Math.max(heightM, leastHeightM) / roughnessM);
}

export const RAIN_ROUGHNESS = equation({
  name: "rain-roughness",
  formula: "terrainFactor · ln(max(heightM, leastHeightM)/roughnessM)",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "terrainFactor", unit: "1", range: [0.1, 0.3] },
    { key: "roughnessM", unit: "m", range: [0.001, 3] },
    { key: "leastHeightM", unit: "m", range: [1, 20] },
  ],
  result: { unit: "1" },
  source: { document: "ISO 15927-3, as coded in a public building-physics script" },
  work: rainRoughness,
});
