/** Change of length with temperature. */
import { equation } from "./equation.ts";

export interface TemperatureChange {
  readonly lengthMm: number;
  /** Coefficient of linear expansion (1/K). */
  readonly expansionPerK: number;
  readonly fromC: number;
  readonly toC: number;
}

/** Change of length (mm): positive when it grows. */
export function thermalExpansion(change: TemperatureChange): number {
  return change.lengthMm * change.expansionPerK * (change.toC - change.fromC);
}

export const THERMAL_EXPANSION = equation({
  name: "thermal-expansion",
  formula: "lengthMm · expansionPerK · (toC − fromC)",
  inputs: [
    { key: "lengthMm", unit: "mm", range: [0, 100_000] },
    { key: "expansionPerK", unit: "1/K", range: [0, 0.0001] },
    { key: "fromC", unit: "°C", range: [-60, 120] },
    { key: "toC", unit: "°C", range: [-60, 120] },
  ],
  result: { unit: "mm" },
  source: { document: "Thermal movement in claddings, Build 166, BRANZ" },
  work: thermalExpansion,
});
