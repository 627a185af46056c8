/** What wind does to a skin that lets no air pass: outside less inside. Less than nothing pulls outward. */
import { equation } from "../equation.ts";

export interface PressureBothSides {
  /** Of the wind at the building (Pa). */
  readonly pressurePa: number;
  /** Coefficient outside, gusts included. */
  readonly outside: number;
  /** Coefficient inside, gusts included. */
  readonly inside: number;
}

/** Net pressure (Pa). */
export function windNetPressure({ pressurePa, outside, inside }: PressureBothSides): number {
  return pressurePa * (outside - inside);
}

export const WIND_NET_PRESSURE = equation({
  name: "wind-net-pressure",
  formula: "pressurePa · (outside − inside)",
  inputs: [
    { key: "pressurePa", unit: "Pa", range: [0, 20000] },
    { key: "outside", unit: "1", range: [-10, 10] },
    { key: "inside", unit: "1", range: [-3, 3] },
  ],
  result: { unit: "Pa" },
  source: {
    document: "National Building Code of Canada, 2020, Division B; ASCE 7; EN 1991-1-4",
    clause: "4.1.7.3.(3); Equation 30.3-1; 5.2",
  },
  work: windNetPressure,
});
