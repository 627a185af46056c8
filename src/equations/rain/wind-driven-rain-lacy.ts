/**
 * Rain that wind carries through an upright plane square to it, by Lacy. His fitted 0.22 and 0.88 are the equation; what a
 * wall takes of it is measured as a factor on the result.
 */
import { equation } from "../equation.ts";

export interface DrivenRainLacy {
  /** Wind while it rains (m/s). */
  readonly windMPerS: number;
  /** Rain on level ground (mm/h). */
  readonly rainMmPerH: number;
}

/** Rain (mm/h). */
export function windDrivenRainLacy({ windMPerS, rainMmPerH }: DrivenRainLacy): number {
  return 0.22 * windMPerS * rainMmPerH ** 0.88;
}

export const WIND_DRIVEN_RAIN_LACY = equation({
  name: "wind-driven-rain-lacy",
  formula: "0.22 · windMPerS · rainMmPerH^0.88",
  inputs: [
    { key: "windMPerS", unit: "m/s", range: [0, 40] },
    { key: "rainMmPerH", unit: "mm/h", range: [0, 200] },
  ],
  result: { unit: "mm/h" },
  source: {
    document: "Lacy, as quoted in van Mook, Driving rain on building envelopes (2002)",
    clause: "5.3",
  },
  work: windDrivenRainLacy,
});
