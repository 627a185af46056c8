/** Whether the faces of neighbouring zones lie in one plane. */
import { type Finding, finding } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import type { PlaneStep } from "./facade.ts";

export function stepFindings(project: Project, steps: readonly PlaneStep[]): Finding[] {
  const limit = project.limits.facesMeetWithin;
  return steps.map(({ face, zones, step, closedBy }) => {
    const size = Math.abs(step);
    const flush = size <= limit.value;
    return finding({
      code: "S007",
      outcome: flush ? "pass" : "fail",
      where: { face, zone: zones[0] },
      says: message(flush ? "setout.step.flush" : "setout.step.stands", {
        face,
        left: zones[0],
        right: zones[1],
        step: size,
      }),
      ...(!flush && {
        hint: closedBy
          ? message("setout.step.pack", {
              zone: closedBy.zone,
              packers: closedBy.packers.map((one) => `${one}`).join(" + "),
            })
          : message("setout.step.no-pack"),
      }),
      demand: size,
      limit: limit.value,
      unit: "mm",
      ratio: limit.value > 0 ? Math.round((size / limit.value) * 1000) / 1000 : size,
      source: { kind: "common practice" },
    });
  });
}
