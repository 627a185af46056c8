/** Corners and azimuths against the plan. */
import type { Finding } from "../../findings/finding.ts";
import { faceFrame } from "../../geometry/frame.ts";
import { distance } from "../../geometry/point.ts";
import { message } from "../../text/message.ts";
import { normaliseDegrees, radiansToDegrees } from "../../units/angle.ts";
import { pointerOf } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Corner, Face, Project } from "../schema/project.ts";
import { PLAN_TOLERANCE_MM, planLength } from "./outlines.ts";

/** How far two faces' azimuths may disagree with their turn in plan (degrees): a compass and a plan are read to one. */
const AZIMUTH_TOLERANCE_DEG = 1;

export function cornerProblems(file: SourceFile, { corners = [], faces }: Project): Finding[] {
  const byId = new Map(faces.map((face) => [face.id, face]));
  const taken = new Map<string, number>();
  return corners.flatMap((corner, i) => [
    ...takenEnds(file, { corner, index: i, taken }),
    ...meeting(file, { corner, index: i, left: byId.get(corner.left), right: byId.get(corner.right) }),
    ...(corner.kind === "lapped" && corner.lead === undefined
      ? [
          problem(file, {
            code: "F004",
            path: ["corners", i, "lead"],
            says: message("project.missing", { key: "lead" }),
            hint: message("project.hint.lead", { left: corner.left, right: corner.right }),
          }),
        ]
      : []),
    ...(corner.kind === "post" && corner.post === undefined
      ? [
          problem(file, {
            code: "F004",
            path: ["corners", i, "post"],
            says: message("project.missing", { key: "post" }),
            hint: message("project.hint.post"),
          }),
        ]
      : []),
  ]);
}

function takenEnds(
  file: SourceFile,
  { corner, index, taken }: { corner: Corner; index: number; taken: Map<string, number> },
): Finding[] {
  const ends = [
    { key: "left", face: corner.left, says: message("project.right-end-taken") },
    { key: "right", face: corner.right, says: message("project.left-end-taken") },
  ];
  return ends.flatMap(({ key, face, says }) => {
    const end = `${key} ${face}`;
    const earlier = taken.get(end);
    if (earlier === undefined) {
      taken.set(end, index);
      return [];
    }
    return [
      problem(file, {
        code: "F025",
        path: ["corners", index, key],
        says: { key: says.key, values: { earlier: pointerOf(["corners", earlier]) } },
        hint: message("project.hint.corner-taken"),
      }),
    ];
  });
}

function meeting(
  file: SourceFile,
  place: { corner: Corner; index: number; left: Face | undefined; right: Face | undefined },
): Finding[] {
  const { corner, index, left, right } = place;
  if (left === undefined || right === undefined) return [];
  const apart = distance(left.plan.to, right.plan.from);
  if (apart <= PLAN_TOLERANCE_MM) return [];
  const swapped = distance(right.plan.to, left.plan.from) <= PLAN_TOLERANCE_MM;
  const path = ["corners", index];
  const says = message("project.corner-apart", {
    left: corner.left,
    right: corner.right,
    apart,
    end: `[${left.plan.to.join(", ")}]`,
    start: `[${right.plan.from.join(", ")}]`,
  });
  if (!swapped)
    return [problem(file, { code: "F029", path, says, hint: message("project.hint.corner-apart") })];
  const hint = message("project.hint.corner-swapped", { left: corner.right, right: corner.left });
  const edit = [
    { op: "replace" as const, path: pointerOf([...path, "left"]), value: corner.right },
    { op: "replace" as const, path: pointerOf([...path, "right"]), value: corner.left },
  ];
  return [problem(file, { code: "F029", path, says, hint, edit })];
}

/**
 * The plan's own north is not in the file, but every face must give the same one: the face that disagrees with most of
 * the others is told.
 */
export function azimuthProblems(file: SourceFile, { faces }: Project): Finding[] {
  const bearings = faces.flatMap((face, index) =>
    planLength(face) > PLAN_TOLERANCE_MM
      ? [{ face, index, inPlanDeg: planAzimuthDeg(face), northDeg: face.azimuthDeg - planAzimuthDeg(face) }]
      : [],
  );
  const agreeing = (northDeg: number): number =>
    bearings.filter((other) => turnBetween(other.northDeg, northDeg) <= AZIMUTH_TOLERANCE_DEG).length;
  const best = bearings.reduce<{ northDeg: number; count: number } | undefined>((so, { northDeg }) => {
    const count = agreeing(northDeg);
    return so === undefined || count > so.count ? { northDeg, count } : so;
  }, undefined);
  if (best === undefined) return [];
  return bearings.flatMap(({ index, inPlanDeg, northDeg }) => {
    if (turnBetween(northDeg, best.northDeg) <= AZIMUTH_TOLERANCE_DEG) return [];
    const asked = Number(normaliseDegrees(best.northDeg + inPlanDeg).toFixed(1));
    const says = message("project.azimuth-off", { asked, count: best.count });
    const hint = message("project.hint.azimuth", { asked });
    return [problem(file, { code: "F018", path: ["faces", index, "azimuthDeg"], says, hint })];
  });
}

/** Azimuth of a face's outward normal if the plan's Y axis were north (degrees). */
function planAzimuthDeg({ plan }: Face): number {
  const { outward } = faceFrame(plan);
  return radiansToDegrees(Math.atan2(outward[0], outward[1]));
}

/** The lesser angle between two directions (degrees). */
function turnBetween(a: number, b: number): number {
  const turn = normaliseDegrees(a - b);
  return Math.min(turn, 360 - turn);
}
