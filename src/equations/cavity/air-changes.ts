/** How often an hour the air of a cavity is renewed. */
import { equation } from "../equation.ts";

export interface PassingAir {
  /** Mean speed (m/s). */
  readonly speedMPerS: number;
  /** From inlet to outlet (m). */
  readonly heightM: number;
}

/** Air changes (1/h). */
export function airChanges({ speedMPerS, heightM }: PassingAir): number {
  return (3600 * speedMPerS) / heightM;
}

export const AIR_CHANGES = equation({
  name: "air-changes",
  formula: "3600·speedMPerS/heightM",
  inputs: [
    { key: "speedMPerS", unit: "m/s", range: [0, 20] },
    { key: "heightM", unit: "m", range: [0.1, 100] },
  ],
  result: { unit: "1/h" },
  source: { document: "Own arithmetic" },
  work: airChanges,
});
