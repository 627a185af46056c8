/** What another yearly probability than 0.02 does to the basic wind. */
import { equation } from "../equation.ts";

export interface YearlyChance {
  /** That the wind is exceeded in a year. */
  readonly yearlyProbability: number;
  /** 0.2. */
  readonly shape: number;
  /** 0.5. */
  readonly exponent: number;
}

/** Factor on the basic wind. */
export function enProbability({ yearlyProbability, shape, exponent }: YearlyChance): number {
  const term = (probability: number) => 1 - shape * Math.log(-Math.log(1 - probability));
  return (term(yearlyProbability) / term(0.02)) ** exponent;
}

export const EN_PROBABILITY = equation({
  name: "en-probability",
  formula: "((1 − shape·ln(−ln(1 − yearlyProbability)))/(1 − shape·ln(−ln 0.98)))^exponent",
  inputs: [
    { key: "yearlyProbability", unit: "1", range: [0.001, 0.6] },
    { key: "shape", unit: "1", range: [0.05, 0.5] },
    { key: "exponent", unit: "1", range: [0.1, 1] },
  ],
  result: { unit: "1" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "4.2, Equation 4.2" },
  work: enProbability,
});
