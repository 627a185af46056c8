/** P013: sheet joints against what heat, moisture and tolerances close. Three sums are shown, from careful to bare. */
import type { SheetDemand } from "../codes/demands.ts";
import { jointWidthArithmetic } from "../equations/joint-width-arithmetic.ts";
import { jointWidthRootSumSquare } from "../equations/joint-width-root-sum-square.ts";
import { type Basis, type Finding, finding, type Outcome } from "../findings/finding.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import type { SheetCladding } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { type FaceContext, sheetZones, type ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

/** Common practice: a sheet cut and set by hand, and what a joint keeps open. */
const SIZE_TOLERANCE_MM = 1;
const PLACE_TOLERANCE_MM = 2;
const LEAST_OPEN_MM = 2;

export function sheetJoint(context: FaceContext): Finding[] {
  return sheetZones(context).flatMap((view) => {
    const demand = context.demands.sheets[view.cladding.id];
    const across = governing(view);
    if (!demand || !across) return [];
    return [judged({ view, demand, ...across })];
  });
}

interface Across {
  /** Length that moves into the joint: half of the sheet on each side, fixed near its middle. */
  readonly lengthMm: number;
  readonly jointMm: number;
}

/** The direction in which the longest sheets meet at a joint. */
function governing(view: ZoneView): Across | undefined {
  const bounds = view.pieces.map(({ outline }) => polygonBounds(outline));
  const directions = (["x", "y"] as const).flatMap((along) => {
    const joints = view.joints.filter((joint) => joint.kind === "sheet joint" && joint.along === along);
    if (joints.length === 0) return [];
    const across = along === "x" ? "y" : "x";
    const lengths = bounds.map((box) => box[across][1] - box[across][0]);
    return [{ lengthMm: Math.max(...lengths), jointMm: Math.min(...joints.map(({ width }) => width)) }];
  });
  return greatest(directions, ({ lengthMm, jointMm }) => lengthMm - jointMm);
}

interface Judged extends Across {
  readonly view: ZoneView<SheetCladding>;
  readonly demand: SheetDemand;
}

function judged({ view, demand, lengthMm, jointMm }: Judged): Finding {
  const where = { path: `${view.claddingPath}/joint`, ...view.where };
  const { heatGrowthMmPerM, temperatures } = demand;
  if (heatGrowthMmPerM === undefined || temperatures === undefined) {
    return finding({
      code: "P013",
      outcome: "cannot evaluate",
      where,
      says: message("proof.sheet-joint.no-temperatures"),
      hint: message("proof.enter-temperatures"),
      source: { kind: "your data sheet" },
    });
  }
  const closing = {
    heatMm: (heatGrowthMmPerM * lengthMm) / 1000,
    moistureMm: (demand.moistureMmPerM * lengthMm) / 1000,
    sizeToleranceMm: SIZE_TOLERANCE_MM,
    placeToleranceMm: PLACE_TOLERANCE_MM,
    leastMm: LEAST_OPEN_MM,
  };
  const larger = Math.max(closing.heatMm, closing.moistureMm);
  const arithmetic = jointWidthArithmetic(closing);
  const root = jointWidthRootSumSquare(closing);
  const bare = jointWidthRootSumSquare({ ...closing, heatMm: 0, moistureMm: larger });
  const floor = Math.max(bare, demand.jointMm);
  const reaches = (limit: number): boolean => holds("at least", { demand: jointMm, limit });
  const outcome: Outcome = !reaches(floor)
    ? "fail"
    : reaches(Math.max(arithmetic, floor))
      ? "pass"
      : "attention";
  const limit = outcome === "fail" ? floor : Math.max(arithmetic, floor);
  const key = { fail: "tight", pass: "enough", attention: "between" }[outcome];
  const basis: Basis = demand.basis;
  return finding({
    code: "P013",
    outcome,
    where,
    says: message(`proof.sheet-joint.${key}`, {
      joint: jointMm,
      arithmetic,
      root,
      bare,
      least: demand.jointMm,
      length: lengthMm,
    }),
    ...(outcome === "pass" ? {} : { hint: message("proof.sheet-joint.hint") }),
    ...compared("at least", { demand: jointMm, limit, unit: "mm" }),
    working: {
      formula:
        "w = α·L·ΔT + ε·L + t_s + t_p + w_0; √: t_s and t_p as √(t_s² + t_p²); bare: the larger of heat and moisture",
      inputs: [
        input("α", { meaning: "expansion", value: demand.expansionPerK, unit: "1/K", basis }),
        input("L", { meaning: "moving-length", value: lengthMm, unit: "mm", basis: "derived" }),
        input("ΔT", {
          meaning: "warming",
          value: temperatures.hottestC - temperatures.fixedC,
          unit: "K",
          basis: temperatures.basis,
        }),
        input("ε", { meaning: "moisture-movement", value: demand.moistureMmPerM, unit: "mm/m", basis }),
        input("t_s", { meaning: "size-tolerance", value: SIZE_TOLERANCE_MM, unit: "mm", basis: "typical" }),
        input("t_p", { meaning: "place-tolerance", value: PLACE_TOLERANCE_MM, unit: "mm", basis: "typical" }),
        input("w_0", { meaning: "least-open", value: LEAST_OPEN_MM, unit: "mm", basis: "typical" }),
      ],
      substituted: `${written(closing.heatMm, 2)} + ${written(closing.moistureMm, 2)} + ${SIZE_TOLERANCE_MM} + ${PLACE_TOLERANCE_MM} + ${LEAST_OPEN_MM} = ${written(arithmetic, 2)}; √: ${written(root, 2)}; bare: ${written(bare, 2)}`,
    },
    source: { kind: "your data sheet" },
    figures: temperatures.figures,
  });
}
