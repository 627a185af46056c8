/**
 * The inverse of the fall speed of a median raindrop: driven rain for one of wind and of rain. Its constants are the two
 * published fits: Best's 1.30, 0.232 and 2.25 as the abstract of his paper prints them, Dingle and Lee's cubic in part from memory.
 */
import { equation } from "../equation.ts";

export interface FallingRain {
  /** Rain on level ground (mm/h). */
  readonly rainMmPerH: number;
}

/** Factor (s/m). */
export function drivingRainFactor({ rainMmPerH }: FallingRain): number {
  const dropMm = 1.3 * rainMmPerH ** 0.232 * Math.LN2 ** (1 / 2.25);
  const fall = -0.16603 + 4.91884 * dropMm - 0.888016 * dropMm ** 2 + 0.054888 * dropMm ** 3;
  return 1 / fall;
}

export const DRIVING_RAIN_FACTOR = equation({
  name: "driving-rain-factor",
  formula: "1/(−0.16603 + 4.91884·D − 0.888016·D² + 0.054888·D³), D = 1.3·rainMmPerH^0.232·(ln 2)^(1/2.25)",
  inputs: [{ key: "rainMmPerH", unit: "mm/h", range: [0, 200] }],
  result: { unit: "s/m" },
  source: {
    document:
      "Straube and Schumacher, Driving rain data for Canadian building design; Best, The size distribution of raindrops (1950); Dingle and Lee (constants in part from memory)",
  },
  work: drivingRainFactor,
});
