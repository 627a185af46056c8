/** P052: how far askew a batten's screw may be driven and still keep to its stud. */
import { missedStudAngle } from "../equations/hanging/missed-stud-angle.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

/** Common practice: a screw driven by hand keeps within this of square. */
const BY_HAND_DEG = 2;

export function studAim(context: FaceContext): Finding[] {
  return context.zones.flatMap((view) => {
    const worst = greatest(aims(context, view), ({ angle }) => -angle);
    return worst ? [judged(view, worst)] : [];
  });
}

interface Aim {
  readonly mark: string;
  readonly at: readonly [number, number];
  readonly studMm: number;
  readonly offsetMm: number;
  readonly coverMm: number;
  readonly depthMm: number;
  readonly angle: number;
}

function aims({ project }: FaceContext, { battens, face }: ZoneView): Aim[] {
  const studs = new Map(
    face.solids.flatMap((solid) =>
      solid.kind === "stud" || solid.kind === "trimmer" ? [[solid.id, polygonBounds(solid.region).x]] : [],
    ),
  );
  return battens.flatMap(({ mark, fixings }) =>
    fixings.flatMap(({ into, screw, x, y }): Aim[] => {
      const stud = studs.get(into);
      const found = project.stock.screws.find(({ id }) => id === screw);
      if (!stud || !found) return [];
      const [left, right] = stud as readonly [number, number];
      const aim = {
        studMm: right - left,
        offsetMm: Math.abs(x - (left + right) / 2),
        coverMm: found.diameter,
        depthMm: found.length,
      };
      return [{ mark, at: [x, y], ...aim, angle: missedStudAngle(aim) }];
    }),
  );
}

function judged(view: ZoneView, aim: Aim): Finding {
  const { angle, studMm, offsetMm, coverMm, depthMm } = aim;
  const easy = holds("at least", { demand: angle, limit: BY_HAND_DEG });
  return finding({
    code: "P052",
    outcome: easy ? "pass" : "attention",
    where: { path: view.facePath, marks: [aim.mark], at: aim.at, ...view.where },
    says: message(`structure.aim.${easy ? "easy" : "narrow"}`, { angle, depth: depthMm, mark: aim.mark }),
    ...(easy ? {} : { hint: message("structure.aim.guide") }),
    ...compared("at least", { demand: angle, limit: BY_HAND_DEG, unit: "°" }),
    working: {
      formula: "atan((b/2 − e − c) / l)",
      inputs: [
        input("b", { meaning: "stud-width", value: studMm, unit: "mm", basis: "given" }),
        input("e", { meaning: "off-middle", value: offsetMm, unit: "mm", basis: "derived" }),
        input("c", { meaning: "cover", value: coverMm, unit: "mm", basis: "given" }),
        input("l", { meaning: "screw-length", value: depthMm, unit: "mm", basis: "given" }),
      ],
      substituted: `atan((${written(studMm)}/2 − ${written(offsetMm)} − ${written(coverMm)}) / ${written(depthMm)}) = ${written(angle)}`,
    },
    source: { kind: "common practice" },
  });
}
