/** The corrosion resistance class that stainless steel needs. */
import { equation } from "../equation.ts";

export interface CorrosionFactors {
  /** F1: 1 indoors, 0 to −15. */
  readonly chlorideFactor: number;
  /** F2: 0 to −10. */
  readonly sulphurFactor: number;
  /** F3: 0 washed by rain, −2 cleaned by plan, −7 neither, as in a cavity. */
  readonly washingFactor: number;
}

/** Class, 1 to 5 for I to V. */
export function corrosionClass({ chlorideFactor, sulphurFactor, washingFactor }: CorrosionFactors): number {
  const sum = chlorideFactor + sulphurFactor + washingFactor;
  return sum >= 1 ? 1 : sum > -7 ? 2 : sum > -15 ? 3 : sum >= -20 ? 4 : 5;
}

export const CORROSION_CLASS = equation({
  name: "corrosion-class",
  formula: "chlorideFactor + sulphurFactor + washingFactor: 1 I, to −6 II, to −14 III, to −20 IV, below V",
  inputs: [
    { key: "chlorideFactor", unit: "1", range: [-15, 1] },
    { key: "sulphurFactor", unit: "1", range: [-10, 0] },
    { key: "washingFactor", unit: "1", range: [-7, 0] },
  ],
  result: { unit: "1" },
  source: { document: "EN 1993-1-4", clause: "Annex A, Table A.2" },
  work: corrosionClass,
});
