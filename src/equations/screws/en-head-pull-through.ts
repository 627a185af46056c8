/** What pulls a head through, in Europe, from the declared strength of the head. */
import { equation } from "../equation.ts";

export interface HeadEurope {
  /** Declared pull-through strength of the head (MPa). */
  readonly strengthMPa: number;
  /** Diameter of the head (mm). */
  readonly headMm: number;
  /** Characteristic, of the wood under the head (kg/m³). */
  readonly densityKgPerM3: number;
  /** At which the strength was declared (kg/m³). */
  readonly declaredAtKgPerM3: number;
}

/** Characteristic pull-through (N). */
export function enHeadPullThrough({
  strengthMPa,
  headMm,
  densityKgPerM3,
  declaredAtKgPerM3,
}: HeadEurope): number {
  return strengthMPa * headMm ** 2 * (densityKgPerM3 / declaredAtKgPerM3) ** 0.8;
}

export const EN_HEAD_PULL_THROUGH = equation({
  name: "en-head-pull-through",
  formula: "strengthMPa · headMm² · (densityKgPerM3/declaredAtKgPerM3)^0.8",
  inputs: [
    { key: "strengthMPa", unit: "MPa", range: [1, 60] },
    { key: "headMm", unit: "mm", range: [4, 30] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [200, 900] },
    { key: "declaredAtKgPerM3", unit: "kg/m³", range: [200, 900] },
  ],
  result: { unit: "N" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.7.2, Equation 8.40b" },
  work: enHeadPullThrough,
});
