/** Why a joint between sheets lies where it does, and what the best layout without it would cost. */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { message } from "../../text/message.ts";
import type { Why } from "../facade.ts";
import type { UprightJoint } from "./candidates.ts";
import type { ColumnPlan } from "./plan.ts";
import { nextBest } from "./score-words.ts";

export function uprightWhy(plan: ColumnPlan, { x, answers, line }: UprightJoint): Why {
  const stays = plan.runnerUp?.joints.some((other) => other.x[0] === x[0]);
  return {
    ...(line && { line }),
    rule: line ? message("setout.sheets.joint.jamb", { line }) : message(`setout.sheets.joint.${answers}`),
    ...nextBestUnless(plan, stays),
  };
}

/** @param column between its upright joints */
export function levelWhy(plan: ColumnPlan, column: Interval, at: number): Why {
  const answers = plan.levels.find((level) => level.at === at)?.answers ?? "equal";
  const beside = plan.runnerUp?.columns.filter(({ x }) => overlaps(x, column)) ?? [];
  const stays =
    beside.length > 0 && beside.every(({ stack }) => stack.joints.some(([other]) => other === at));
  return { rule: message(`setout.sheets.joint.${answers}`), ...nextBestUnless(plan, stays) };
}

function nextBestUnless(plan: ColumnPlan, stays: boolean | undefined): Pick<Why, "runnerUp"> {
  return plan.runnerUp && !stays ? { runnerUp: nextBest(plan, plan.runnerUp) } : {};
}
