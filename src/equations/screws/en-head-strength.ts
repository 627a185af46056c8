/** Pull-through strength of a head where none is declared, in Europe: that of a nail. */
import { equation } from "../equation.ts";

export interface HeadWood {
  /** Characteristic, of the wood under the head (kg/m³). */
  readonly densityKgPerM3: number;
}

/** Characteristic strength (MPa). */
export function enHeadStrength({ densityKgPerM3 }: HeadWood): number {
  return 70e-6 * densityKgPerM3 ** 2;
}

export const EN_HEAD_STRENGTH = equation({
  name: "en-head-strength",
  formula: "70e-6 · densityKgPerM3²",
  inputs: [{ key: "densityKgPerM3", unit: "kg/m³", range: [200, 500] }],
  result: { unit: "MPa" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.3.2, Equation 8.26" },
  work: enHeadStrength,
});
