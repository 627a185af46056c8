/** How strong gusts are beside the mean wind in Europe, on level ground. */
import { equation } from "../equation.ts";

export interface TurbulentHeight {
  /** Height above ground (m). */
  readonly heightM: number;
  /** Of the terrain (m). */
  readonly roughnessM: number;
  /** Below this height the factor stays: 1, 1, 2, 5, 10 (m). */
  readonly leastHeightM: number;
}

/** Intensity of turbulence. */
export function enTurbulence({ heightM, roughnessM, leastHeightM }: TurbulentHeight): number {
  return 1 / Math.log(Math.max(heightM, leastHeightM) / roughnessM);
}

export const EN_TURBULENCE = equation({
  name: "en-turbulence",
  formula: "1 / ln(max(heightM, leastHeightM)/roughnessM)",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "roughnessM", unit: "m", range: [0.001, 3] },
    { key: "leastHeightM", unit: "m", range: [0.5, 30] },
  ],
  result: { unit: "1" },
  source: {
    document: "EN 1991-1-4, 2005 with A1",
    clause: "4.4, Equation 4.7, with the recommended turbulence factor 1 and no hill",
  },
  work: enTurbulence,
});
