/** What drives air up a warm cavity: the weight that its air lacks against the air outside. */
import { GAS_CONSTANT, ZERO_C } from "../air/air-density.ts";
import { equation } from "../equation.ts";

const GRAVITY = 9.81;

export interface WarmColumn {
  /** Mean temperature of the air in the cavity (°C). */
  readonly gapC: number;
  /** Outside air (°C). */
  readonly outsideC: number;
  /** From inlet to outlet (m). */
  readonly heightM: number;
  /** Air pressure (Pa). */
  readonly pressurePa: number;
}

/** Pressure (Pa), positive upward. */
export function buoyancyPressure({ gapC, outsideC, heightM, pressurePa }: WarmColumn): number {
  const gap = gapC + ZERO_C;
  const outside = outsideC + ZERO_C;
  return ((pressurePa / GAS_CONSTANT) * GRAVITY * heightM * (gap - outside)) / (gap * outside);
}

export const BUOYANCY_PRESSURE = equation({
  name: "buoyancy-pressure",
  formula:
    "pressurePa/287.055 · 9.81 · heightM · (T_g − T_o)/(T_g·T_o), T_g = gapC + 273.15, T_o = outsideC + 273.15",
  inputs: [
    { key: "gapC", unit: "°C", range: [-60, 100] },
    { key: "outsideC", unit: "°C", range: [-60, 60] },
    { key: "heightM", unit: "m", range: [0, 100] },
    { key: "pressurePa", unit: "Pa", range: [50_000, 120_000] },
  ],
  result: { unit: "Pa" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: buoyancyPressure,
});
