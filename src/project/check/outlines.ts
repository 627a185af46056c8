/** Faces in themselves: the plan line, the outline, the ground line. */
import type { Finding } from "../../findings/finding.ts";
import { distance } from "../../geometry/point.ts";
import { isSimple, polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import type { Path } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Face, Project } from "../schema/project.ts";

/** How far plan points and outlines may disagree (mm): a plan is measured and written to the millimetre. */
export const PLAN_TOLERANCE_MM = 1;

/** The sheathing's length in plan (mm). */
export function planLength({ plan }: Face): number {
  return distance(plan.from, plan.to);
}

export function outlineProblems(file: SourceFile, { faces }: Project): Finding[] {
  return faces.flatMap((face, i) => [
    ...planLineProblems(file, face, ["faces", i]),
    ...polygonProblems(file, face, ["faces", i]),
    ...orderProblems(file, { values: face.ground.map(([x]) => x), path: ["faces", i, "ground"] }),
  ]);
}

function planLineProblems(file: SourceFile, face: Face, at: Path): Finding[] {
  const length = planLength(face);
  if (length <= PLAN_TOLERANCE_MM) {
    const says = message("project.plan-short", { length });
    return [
      problem(file, { code: "F019", path: [...at, "plan"], says, hint: message("project.hint.plan-short") }),
    ];
  }
  const [left, right] = polygonBounds(face.outline).x;
  if (left >= -PLAN_TOLERANCE_MM && right <= length + PLAN_TOLERANCE_MM) return [];
  const says = message("project.outline-off-plan", { left, right, length });
  const hint = message("project.hint.outline-off-plan", { length });
  return [problem(file, { code: "F019", path: [...at, "outline"], says, hint })];
}

function polygonProblems(file: SourceFile, face: Face, at: Path): Finding[] {
  if (isSimple(face.outline)) return [];
  const path = [...at, "outline"];
  const { x, y } = polygonBounds(face.outline);
  if (x[0] === x[1] || y[0] === y[1]) {
    const says = message("project.outline-flat");
    return [problem(file, { code: "F011", path, says, hint: message("project.hint.outline-flat") })];
  }
  const [first, last] = [face.outline[0], face.outline.at(-1)];
  const closed = first?.[0] === last?.[0] && first?.[1] === last?.[1];
  return [
    problem(file, {
      code: "F011",
      path,
      says: message("project.outline-crosses"),
      hint: closed ? message("project.hint.outline-closed") : message("project.hint.outline-crosses"),
    }),
  ];
}

/** Values that must grow along a list. */
export function orderProblems(
  file: SourceFile,
  { values, path }: { values: readonly number[]; path: Path },
): Finding[] {
  const at = values.findIndex((value, i) => i > 0 && value <= (values[i - 1] as number));
  if (at < 0) return [];
  const says = message("project.out-of-order", {
    value: values[at] as number,
    before: values[at - 1] as number,
  });
  return [problem(file, { code: "F030", path: [...path, at], says, hint: message("project.hint.order") })];
}
