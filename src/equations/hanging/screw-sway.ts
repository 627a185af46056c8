/**
 * How far a screw bends that carries a weight across a soft layer, by elasticity alone: between fixed at both ends
 * (12) and at one (3). What friction and the layer take is left out.
 */
import { equation } from "../equation.ts";

export interface SwayingScrew {
  /** Weight on the screw (N). */
  readonly loadN: number;
  /** Thickness that it crosses (mm). */
  readonly gapMm: number;
  /** Diameter at the root of the thread (mm). */
  readonly rootMm: number;
  /** 12 fixed at both ends against turning, 3 at one alone. */
  readonly stiffness: number;
  /** Of the metal: steel 210 000 (MPa). */
  readonly modulusMPa: number;
}

/** Sag (mm). */
export function screwSway({ loadN, gapMm, rootMm, stiffness, modulusMPa }: SwayingScrew): number {
  const secondMoment = (Math.PI * rootMm ** 4) / 64;
  return (loadN * gapMm ** 3) / (stiffness * modulusMPa * secondMoment);
}

export const SCREW_SWAY = equation({
  name: "screw-sway",
  formula: "loadN · gapMm³ / (stiffness · modulusMPa · π·rootMm⁴/64)",
  inputs: [
    { key: "loadN", unit: "N", range: [0, 5000] },
    { key: "gapMm", unit: "mm", range: [1, 400] },
    { key: "rootMm", unit: "mm", range: [1, 20] },
    { key: "stiffness", unit: "1", range: [3, 12] },
    { key: "modulusMPa", unit: "MPa", range: [50000, 250000] },
  ],
  result: { unit: "mm" },
  source: { document: "Elastic bending of a bar of round section" },
  work: screwSway,
});
