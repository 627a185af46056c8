/** How squarely the sun meets an upright wall. */
import { equation } from "../equation.ts";

const RADIANS = Math.PI / 180;

export interface SunAndWall {
  readonly elevationDeg: number;
  /** Of the sun, clockwise from north. */
  readonly azimuthDeg: number;
  /** Of the wall's outward normal, clockwise from north. */
  readonly wallAzimuthDeg: number;
}

/** Cosine between the beam and the wall's normal; below 0 the sun is behind the wall. */
export function incidence({ elevationDeg, azimuthDeg, wallAzimuthDeg }: SunAndWall): number {
  return Math.cos(elevationDeg * RADIANS) * Math.cos((azimuthDeg - wallAzimuthDeg) * RADIANS);
}

export const SUN_WALL_INPUTS = [
  { key: "elevationDeg", unit: "°", range: [-90, 90] },
  { key: "azimuthDeg", unit: "°", range: [0, 360] },
  { key: "wallAzimuthDeg", unit: "°", range: [0, 360] },
] as const;

export const INCIDENCE = equation({
  name: "wall-incidence",
  formula: "cos elevationDeg · cos(azimuthDeg − wallAzimuthDeg)",
  inputs: SUN_WALL_INPUTS,
  result: { unit: "1" },
  source: { document: "Plane geometry of an upright wall, ASHRAE Handbook Fundamentals, solar radiation" },
  work: incidence,
});
