/** How far askew a screw may be driven and still keep to the stud. */
import { equation } from "../equation.ts";

export interface AskewScrew {
  /** Width of the stud (mm). */
  readonly studMm: number;
  /** Of the screw from the stud’s middle (mm). */
  readonly offsetMm: number;
  /** Wood to keep beside the point (mm). */
  readonly coverMm: number;
  /** From the batten’s face to the screw’s point (mm). */
  readonly depthMm: number;
}

/** Angle off square (degrees); less than nothing where it misses even straight. */
export function missedStudAngle({ studMm, offsetMm, coverMm, depthMm }: AskewScrew): number {
  return (Math.atan((studMm / 2 - offsetMm - coverMm) / depthMm) * 180) / Math.PI;
}

export const MISSED_STUD_ANGLE = equation({
  name: "missed-stud-angle",
  formula: "atan((studMm/2 − offsetMm − coverMm)/depthMm) · 180/π",
  inputs: [
    { key: "studMm", unit: "mm", range: [20, 300] },
    { key: "offsetMm", unit: "mm", range: [0, 100] },
    { key: "coverMm", unit: "mm", range: [0, 50] },
    { key: "depthMm", unit: "mm", range: [20, 600] },
  ],
  result: { unit: "°" },
  source: { document: "Plane geometry" },
  work: missedStudAngle,
});
