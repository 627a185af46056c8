/** What a square metre of cladding weighs. */
import { equation } from "../equation.ts";

export interface CladdingMass {
  /** Of the material (kg/m³). */
  readonly densityKgPerM3: number;
  /** Of the cladding (mm). */
  readonly thicknessMm: number;
  /** Open joints over the whole. */
  readonly openShare: number;
}

/** Mass (kg/m²). */
export function areaMass({ densityKgPerM3, thicknessMm, openShare }: CladdingMass): number {
  return densityKgPerM3 * (thicknessMm / 1000) * (1 - openShare);
}

export const AREA_MASS = equation({
  name: "area-mass",
  formula: "densityKgPerM3 · thicknessMm/1000 · (1 − openShare)",
  inputs: [
    { key: "densityKgPerM3", unit: "kg/m³", range: [10, 9000] },
    { key: "thicknessMm", unit: "mm", range: [0.1, 200] },
    { key: "openShare", unit: "1", range: [0, 0.9] },
  ],
  result: { unit: "kg/m²" },
  source: { document: "Own arithmetic" },
  work: areaMass,
});
