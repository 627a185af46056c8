/** What the hourly pressure of a place becomes at a building in Canada, before pressure coefficients. */
import { equation } from "../equation.ts";

export interface PlacePressure {
  /** 0.8 low, 1 normal, 1.15 high; 0.75 for deflection. */
  readonly importance: number;
  /** Reached once in 50 years (Pa). */
  readonly hourlyPa: number;
  /** Exposure factor. */
  readonly exposure: number;
  /** 1 where no hill stands. */
  readonly topography: number;
}

/** Pressure (Pa). */
export function nbcPressure({ importance, hourlyPa, exposure, topography }: PlacePressure): number {
  return importance * hourlyPa * exposure * topography;
}

export const NBC_PRESSURE = equation({
  name: "nbc-pressure",
  formula: "importance · hourlyPa · exposure · topography",
  inputs: [
    { key: "importance", unit: "1", range: [0.5, 1.5] },
    { key: "hourlyPa", unit: "Pa", range: [50, 3000] },
    { key: "exposure", unit: "1", range: [0.5, 3] },
    { key: "topography", unit: "1", range: [1, 4] },
  ],
  result: { unit: "Pa" },
  source: { document: "National Building Code of Canada, 2020, Division B", clause: "4.1.7.3.(1)" },
  work: nbcPressure,
});
