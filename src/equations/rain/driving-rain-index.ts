/** The yearly index of driving rain of a place: rain times wind. */
import { equation } from "../equation.ts";

export interface YearOfRain {
  /** Rain in the year (mm). */
  readonly rainMm: number;
  /** Mean wind (m/s). */
  readonly windMPerS: number;
}

/** Index (m²/s). */
export function drivingRainIndex({ rainMm, windMPerS }: YearOfRain): number {
  return (rainMm / 1000) * windMPerS;
}

export const DRIVING_RAIN_INDEX = equation({
  name: "driving-rain-index",
  formula: "rainMm/1000 · windMPerS",
  inputs: [
    { key: "rainMm", unit: "mm", range: [0, 10_000] },
    { key: "windMPerS", unit: "m/s", range: [0, 30] },
  ],
  result: { unit: "m²/s" },
  source: { document: "Lacy, An index of exposure to driving rain, BRE Digest 127" },
  work: drivingRainIndex,
});
