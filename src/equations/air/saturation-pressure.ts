/** The pressure of water vapour in saturated air, over ice below freezing and over water above. */

import { equation } from "../equation.ts";
import { ZERO_C } from "./air-density.ts";

const TRIPLE_POINT_C = 0.01;

export interface SaturatedAir {
  /** Air temperature (°C). */
  readonly airC: number;
}

/** Vapour pressure (Pa). */
export function saturationPressure({ airC }: SaturatedAir): number {
  const t = airC + ZERO_C;
  // Over ice, Equation 5; over water, Equation 6.
  const log =
    airC < TRIPLE_POINT_C
      ? -5674.5359 / t +
        6.3925247 -
        9.677843e-3 * t +
        6.2215701e-7 * t ** 2 +
        2.0747825e-9 * t ** 3 -
        9.484024e-13 * t ** 4 +
        4.1635019 * Math.log(t)
      : -5800.2206 / t +
        1.3914993 -
        4.8640239e-2 * t +
        4.1764768e-5 * t ** 2 -
        1.4452093e-8 * t ** 3 +
        6.5459673 * Math.log(t);
  return Math.exp(log);
}

export const SATURATION_PRESSURE = equation({
  name: "saturation-pressure",
  formula: "exp of Equation 5 (over ice, airC < 0.01) or 6 (over water)",
  inputs: [{ key: "airC", unit: "°C", range: [-100, 200] }],
  result: { unit: "Pa" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equations 5 and 6" },
  work: saturationPressure,
});
