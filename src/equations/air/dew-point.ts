/** The temperature at which air of a given vapour pressure is saturated. */

import { equation } from "../equation.ts";
import { saturationPressure } from "./saturation-pressure.ts";

export interface Vapour {
  /** Vapour pressure (Pa). */
  readonly vapourPa: number;
}

/** Dew or frost point (°C), found by halving on the saturation pressure. */
export function dewPoint({ vapourPa }: Vapour): number {
  let [low, high] = [-100, 100];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (saturationPressure({ airC: middle }) < vapourPa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const DEW_POINT = equation({
  name: "dew-point",
  formula: "the airC at which the saturation pressure is vapourPa",
  inputs: [{ key: "vapourPa", unit: "Pa", range: [0.002, 100_000] }],
  result: { unit: "°C" },
  source: {
    document: "ASHRAE Handbook of Fundamentals, 2017",
    clause: "Chapter 1, Equations 5 and 6, solved for the temperature",
  },
  work: dewPoint,
});
