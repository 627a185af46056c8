/** Moisture content of wood from what a resistance meter shows. */
import { equation } from "./equation.ts";

export interface MeterReading {
  /** As the meter shows it (%). */
  readonly meterPercent: number;
  /** Temperature at which the meter was calibrated (°C). */
  readonly calibratedC: number;
  /** Of the wood (°C). */
  readonly woodC: number;
  /** What the meter's chart adds for the species at this reading (points of percent). */
  readonly speciesPoints: number;
}

/** Points of percent that a reading is out for each step of temperature, and that step (K): 0.5 for 10 °F. */
const POINTS = 0.5;
const STEP_K = 5.6;

/** Moisture content (%): a meter shows too little in cold wood. Good between 6 % and fibre saturation, where meters read at all. */
export function meterMoisture({ meterPercent, calibratedC, woodC, speciesPoints }: MeterReading): number {
  return meterPercent + (POINTS * (calibratedC - woodC)) / STEP_K + speciesPoints;
}

export const METER_MOISTURE = equation({
  name: "meter-moisture",
  formula: "meterPercent + 0.5 · (calibratedC − woodC) / 5.6 + speciesPoints",
  inputs: [
    { key: "meterPercent", unit: "%", range: [6, 30] },
    { key: "calibratedC", unit: "°C", range: [0, 40] },
    { key: "woodC", unit: "°C", range: [-40, 60] },
    { key: "speciesPoints", unit: "%", range: [-10, 10] },
  ],
  result: { unit: "%" },
  source: {
    document: "Wood Handbook, Forest Products Laboratory, US Department of Agriculture",
    clause: "Chapter 13, moisture meters",
  },
  work: meterMoisture,
});
