/** The whole flow for one project: designed, cut, taken off, and every finding of it in one list. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Design } from "../../design.ts";
import { byWeight, type Finding } from "../../findings/finding.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import { message } from "../../text/message.ts";
import { cutOnTheWay } from "../cut-on-the-way.ts";
import { designed } from "../designed.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";

export interface Worked {
  readonly opened: OpenedProject;
  readonly design: Design;
  /** Undefined where the verifier refused it. */
  readonly plan: CutPlan | undefined;
  readonly cutFindings: readonly Finding[];
  readonly takeoff: Takeoff;
  /** Of reading, setting-out, proof and cutting. */
  readonly findings: readonly Finding[];
}

export function workThrough(job: Job, opened: OpenedProject): Worked {
  const { project } = opened;
  job.progress(message("cli.doing.design"));
  const done = designed(project);
  const { plan, findings: cutFindings } = cutOnTheWay(job, project, done.facade);
  return {
    opened,
    design: done,
    plan,
    cutFindings,
    takeoff: takeOff(project, done.facade, plan),
    findings: [...opened.findings, ...done.findings, ...cutFindings].sort(byWeight),
  };
}
