/** Heat that two facing walls pass by radiation, per kelvin between them. */
import { ZERO_C } from "../air/air-density.ts";
import { equation } from "../equation.ts";

const STEFAN_BOLTZMANN = 5.670374e-8;

export interface FacingWalls {
  /** Mean temperature of the two (°C). */
  readonly meanC: number;
  /** Of the cladding’s back. */
  readonly outerEmissivity: number;
  /** Of the membrane. */
  readonly innerEmissivity: number;
}

/** Coefficient (W/m²K). */
export function radiationCoefficient({ meanC, outerEmissivity, innerEmissivity }: FacingWalls): number {
  const kelvin = meanC + ZERO_C;
  return (4 * STEFAN_BOLTZMANN * kelvin ** 3) / (1 / outerEmissivity + 1 / innerEmissivity - 1);
}

export const RADIATION_COEFFICIENT = equation({
  name: "radiation-coefficient",
  formula: "4·σ·(meanC + 273.15)³ / (1/outerEmissivity + 1/innerEmissivity − 1), σ = 5.670374e-8",
  inputs: [
    { key: "meanC", unit: "°C", range: [-60, 120] },
    { key: "outerEmissivity", unit: "1", range: [0.02, 1] },
    { key: "innerEmissivity", unit: "1", range: [0.02, 1] },
  ],
  result: { unit: "W/m²K" },
  source: { document: "Radiation between parallel grey walls" },
  work: radiationCoefficient,
});
