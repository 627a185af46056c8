/** How terrain and height change the mean wind in Europe. */
import { equation } from "../equation.ts";
import { enTerrainFactor } from "./en-terrain-factor.ts";

export interface RoughnessHeight {
  /** Height above ground (m). */
  readonly heightM: number;
  /** Of the terrain (m). */
  readonly roughnessM: number;
  /** Below this height the factor stays: 1, 1, 2, 5, 10 (m). */
  readonly leastHeightM: number;
}

/** Roughness factor. */
export function enRoughness({ heightM, roughnessM, leastHeightM }: RoughnessHeight): number {
  return enTerrainFactor({ roughnessM }) * Math.log(Math.max(heightM, leastHeightM) / roughnessM);
}

export const EN_ROUGHNESS = equation({
  name: "en-roughness",
  formula: "0.19·(roughnessM/0.05)^0.07 · ln(max(heightM, leastHeightM)/roughnessM)",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "roughnessM", unit: "m", range: [0.001, 3] },
    { key: "leastHeightM", unit: "m", range: [0.5, 30] },
  ],
  result: { unit: "1" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.3.2, Equations 4.3 to 4.5" },
  work: enRoughness,
});
