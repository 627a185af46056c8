/** Smooth flow between two walls: what friction takes. */
import { equation } from "../equation.ts";

export interface FlowBetweenWalls {
  /** Viscosity of air (Pa·s). */
  readonly viscosityPaS: number;
  /** Along the flow (m). */
  readonly heightM: number;
  /** Mean speed (m/s). */
  readonly speedMPerS: number;
  /** Between the walls (m). */
  readonly depthM: number;
}

/** Pressure (Pa). */
export function plateFriction({ viscosityPaS, heightM, speedMPerS, depthM }: FlowBetweenWalls): number {
  return (12 * viscosityPaS * heightM * speedMPerS) / depthM ** 2;
}

export const PLATE_FRICTION = equation({
  name: "plate-friction",
  formula: "12 · viscosityPaS · heightM · speedMPerS / depthM²",
  inputs: [
    { key: "viscosityPaS", unit: "Pa·s", range: [1e-5, 3e-5] },
    { key: "heightM", unit: "m", range: [0, 100] },
    { key: "speedMPerS", unit: "m/s", range: [0, 20] },
    { key: "depthM", unit: "m", range: [0.001, 0.5] },
  ],
  result: { unit: "Pa" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: plateFriction,
});
