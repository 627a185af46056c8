/** Least width of an open joint when its tolerances, being independent, are added as the root of their squares. */
import { equation } from "./equation.ts";
import type { JointClosing } from "./joint-width-arithmetic.ts";

/** Nominal width of the joint (mm): movements added, tolerances as the root of the sum of squares. */
export function jointWidthRootSumSquare(joint: JointClosing): number {
  const tolerance = Math.hypot(joint.sizeToleranceMm, joint.placeToleranceMm);
  return joint.heatMm + joint.moistureMm + tolerance + joint.leastMm;
}

export const JOINT_WIDTH_ROOT_SUM_SQUARE = equation({
  name: "joint-width-root-sum-square",
  formula: "heatMm + moistureMm + √(sizeToleranceMm² + placeToleranceMm²) + leastMm",
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
  work: jointWidthRootSumSquare,
});
