/**
 * Air speed in a cavity where the flow stays smooth: dp = ½ρv²(1 + Z) + 12µHv/s², solved for v. A printed closed
 * form has ρ² in place of ρ and is wrong by its dimensions.
 */
import { equation } from "../equation.ts";

export interface DrivenCavity {
  /** What drives the air (Pa). */
  readonly pressureDifferencePa: number;
  /** Density of air (kg/m³). */
  readonly densityKgPerM3: number;
  /** Viscosity of air (Pa·s). */
  readonly viscosityPaS: number;
  /** Depth of the cavity (m). */
  readonly depthM: number;
  /** From inlet to outlet (m). */
  readonly heightM: number;
  /** Of inlet and outlet together. */
  readonly lossFactor: number;
}

/** Speed (m/s). */
export function cavitySpeed({
  pressureDifferencePa,
  densityKgPerM3,
  viscosityPaS,
  depthM,
  heightM,
  lossFactor,
}: DrivenCavity): number {
  const friction = (12 * viscosityPaS * heightM) / depthM ** 2;
  const inertia = densityKgPerM3 * (1 + lossFactor);
  return (Math.sqrt(friction ** 2 + 2 * inertia * pressureDifferencePa) - friction) / inertia;
}

/** Shared by the speeds with smooth and with rough walls. */
export const DRIVEN_CAVITY_INPUTS = [
  { key: "pressureDifferencePa", unit: "Pa", range: [0, 200] },
  { key: "densityKgPerM3", unit: "kg/m³", range: [0.8, 1.6] },
  { key: "viscosityPaS", unit: "Pa·s", range: [1e-5, 3e-5] },
  { key: "depthM", unit: "m", range: [0.001, 0.5] },
  { key: "heightM", unit: "m", range: [0.1, 100] },
  { key: "lossFactor", unit: "1", range: [0, 1_000_000] },
] as const;

export const CAVITY_SPEED = equation({
  name: "cavity-speed",
  formula:
    "{√[b² + 2·densityKgPerM3·(1 + lossFactor)·pressureDifferencePa] − b} / [densityKgPerM3·(1 + lossFactor)], b = 12·viscosityPaS·heightM/depthM²",
  inputs: DRIVEN_CAVITY_INPUTS,
  result: { unit: "m/s" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: cavitySpeed,
});
