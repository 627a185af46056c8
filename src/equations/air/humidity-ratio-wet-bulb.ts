/** Water vapour carried by a kilogram of dry air, from a dry and a wet thermometer. */

import { equation } from "../equation.ts";
import { humidityRatio } from "./humidity-ratio.ts";
import { saturationPressure } from "./saturation-pressure.ts";

export interface TwoThermometers {
  /** Dry thermometer (°C). */
  readonly airC: number;
  /** Wet thermometer (°C). */
  readonly wetBulbC: number;
  /** Air pressure (Pa). */
  readonly pressurePa: number;
}

/** Humidity ratio (kg/kg). */
export function humidityRatioWetBulb({ airC, wetBulbC, pressurePa }: TwoThermometers): number {
  const saturated = humidityRatio({ vapourPa: saturationPressure({ airC: wetBulbC }), pressurePa });
  // Over ice on the wick, Equation 35; over water, Equation 33.
  return wetBulbC < 0
    ? ((2830 - 0.24 * wetBulbC) * saturated - 1.006 * (airC - wetBulbC)) /
        (2830 + 1.86 * airC - 2.1 * wetBulbC)
    : ((2501 - 2.326 * wetBulbC) * saturated - 1.006 * (airC - wetBulbC)) /
        (2501 + 1.86 * airC - 4.186 * wetBulbC);
}

export const HUMIDITY_RATIO_WET_BULB = equation({
  name: "humidity-ratio-wet-bulb",
  formula:
    "[(2501 − 2.326·wetBulbC)·W_s(wetBulbC, pressurePa) − 1.006·(airC − wetBulbC)] / (2501 + 1.86·airC − 4.186·wetBulbC); below 0 °C the form over ice",
  inputs: [
    { key: "airC", unit: "°C", range: [-30, 60] },
    { key: "wetBulbC", unit: "°C", range: [-30, 50] },
    { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
  ],
  result: { unit: "kg/kg" },
  source: { document: "ASHRAE Handbook of Fundamentals, 2017", clause: "Chapter 1, Equations 33 and 35" },
  work: humidityRatioWetBulb,
});
