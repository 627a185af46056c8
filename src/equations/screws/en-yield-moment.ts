/** At what moment a round dowel yields, in Europe. */
import { equation } from "../equation.ts";

export interface RoundDowel {
  /** Tensile strength of the wire (MPa). */
  readonly tensileMPa: number;
  /** Of the dowel; of a screw its effective diameter (mm). */
  readonly diameterMm: number;
}

/** Characteristic yield moment (N·mm). */
export function enYieldMoment({ tensileMPa, diameterMm }: RoundDowel): number {
  return 0.3 * tensileMPa * diameterMm ** 2.6;
}

export const EN_YIELD_MOMENT = equation({
  name: "en-yield-moment",
  formula: "0.3 · tensileMPa · diameterMm^2.6",
  inputs: [
    { key: "tensileMPa", unit: "MPa", range: [300, 1500] },
    { key: "diameterMm", unit: "mm", range: [2, 30] },
  ],
  result: { unit: "N·mm" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.3.1.1, Equation 8.14" },
  work: enYieldMoment,
});
