/** What a screw holds in the side grain, in Europe, at a right angle to the grain. */
import { equation } from "../equation.ts";

export interface HeldThreadEurope {
  /** Outer diameter of the thread (mm). */
  readonly diameterMm: number;
  /** Thread in the wood (mm). */
  readonly threadMm: number;
  /** Characteristic, of the wood (kg/m³). */
  readonly densityKgPerM3: number;
}

/** Characteristic withdrawal (N). */
export function enScrewWithdrawal({ diameterMm, threadMm, densityKgPerM3 }: HeldThreadEurope): number {
  const strength = 0.52 * diameterMm ** -0.5 * threadMm ** -0.1 * densityKgPerM3 ** 0.8;
  return strength * diameterMm * threadMm * Math.min(diameterMm / 8, 1);
}

export const EN_SCREW_WITHDRAWAL = equation({
  name: "en-screw-withdrawal",
  formula:
    "0.52·diameterMm^−0.5·threadMm^−0.1·densityKgPerM3^0.8 · diameterMm · threadMm · min(diameterMm/8, 1)",
  inputs: [
    { key: "diameterMm", unit: "mm", range: [6, 12] },
    { key: "threadMm", unit: "mm", range: [36, 400] },
    { key: "densityKgPerM3", unit: "kg/m³", range: [200, 700] },
  ],
  result: { unit: "N" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.7.2, Equations 8.38 and 8.39" },
  work: enScrewWithdrawal,
});
