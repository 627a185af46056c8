/** Risk of sulphur dioxide for stainless steel outdoors: factor F2. */
import { equation } from "../equation.ts";

export interface SulphurAround {
  /** Mean in the air (µg/m³). */
  readonly sulphurDioxideUgPerM3: number;
}

/** Factor, 0 to −10. */
export function sulphurExposure({ sulphurDioxideUgPerM3 }: SulphurAround): number {
  return sulphurDioxideUgPerM3 < 10 ? 0 : sulphurDioxideUgPerM3 <= 90 ? -5 : -10;
}

export const SULPHUR_EXPOSURE = equation({
  name: "sulphur-exposure",
  formula: "sulphurDioxideUgPerM3: <10 0, ≤90 −5, ≤250 −10",
  inputs: [{ key: "sulphurDioxideUgPerM3", unit: "µg/m³", range: [0, 250] }],
  result: { unit: "1" },
  source: { document: "EN 1993-1-4", clause: "Annex A, Table A.1" },
  work: sulphurExposure,
});
