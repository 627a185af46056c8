/** Least width of an open joint when everything that closes it comes together. */
import { equation } from "./equation.ts";

export interface JointClosing {
  /** Growth by heat from the temperature at fixing, over the length that moves into the joint (mm). */
  readonly heatMm: number;
  /** Growth by moisture over the same length (mm). */
  readonly moistureMm: number;
  /** How far a piece may be too large, and how far it may be set off its place (mm). */
  readonly sizeToleranceMm: number;
  readonly placeToleranceMm: number;
  /** What must stay open (mm). */
  readonly leastMm: number;
}

/** Nominal width of the joint (mm), every part added. */
export function jointWidthArithmetic(joint: JointClosing): number {
  return joint.heatMm + joint.moistureMm + joint.sizeToleranceMm + joint.placeToleranceMm + joint.leastMm;
}

export const JOINT_WIDTH_ARITHMETIC = equation({
  name: "joint-width-arithmetic",
  formula: "heatMm + moistureMm + sizeToleranceMm + placeToleranceMm + leastMm",
  inputs: [
    { key: "heatMm", unit: "mm", range: [0, 100] },
    { key: "moistureMm", unit: "mm", range: [0, 100] },
    { key: "sizeToleranceMm", unit: "mm", range: [0, 20] },
    { key: "placeToleranceMm", unit: "mm", range: [0, 20] },
    { key: "leastMm", unit: "mm", range: [0, 50] },
  ],
  result: { unit: "mm" },
  source: {
    document: "Own sum, in the structure of BS 6093 and ASTM C1472 (neither opened)",
  },
  work: jointWidthArithmetic,
});
