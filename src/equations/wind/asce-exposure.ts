/** How terrain and height change the wind’s pressure in the United States. */
import { equation } from "../equation.ts";

export interface ExposureHeight {
  /** Mean height of the roof (m). */
  readonly heightM: number;
  /** Below this the coefficient stays: 15 ft, 4.57 m (m). */
  readonly leastHeightM: number;
  /** Height of the boundary layer (m). */
  readonly gradientM: number;
  /** Power of the profile. */
  readonly alpha: number;
  /** 2.01 in the edition of 2016, 2.41 in that of 2022. */
  readonly factor: number;
}

/** Coefficient Kz. */
export function asceExposure({ heightM, leastHeightM, gradientM, alpha, factor }: ExposureHeight): number {
  return factor * (Math.max(heightM, leastHeightM) / gradientM) ** (2 / alpha);
}

export const ASCE_EXPOSURE = equation({
  name: "asce-exposure",
  formula: "factor · (max(heightM, leastHeightM)/gradientM)^(2/alpha)",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 500] },
    { key: "leastHeightM", unit: "m", range: [1, 30] },
    { key: "gradientM", unit: "m", range: [100, 1500] },
    { key: "alpha", unit: "1", range: [3, 15] },
    { key: "factor", unit: "1", range: [1, 4] },
  ],
  result: { unit: "1" },
  source: { document: "ASCE 7-16 and 7-22", clause: "Table 26.10-1, note 1" },
  work: asceExposure,
});
