/** A line that the order of widths misses is met by another gap over it than under it: a segment of the rod ends there. */
import type { Choice } from "../../findings/finding.ts";
import { addLine } from "../../project/editing/lines.ts";
import { message } from "../../text/message.ts";
import { sameLength } from "../../units/length.ts";
import type { RodOutcome, RodProblem } from "../rod/index.ts";
import { problemWith, settingAfter } from "./mends.ts";
import type { RodSetting } from "./task.ts";

/**
 * The change as an edit, tried on the project itself: a line of its own on the leading face. Undefined where no rod then keeps to
 * the band, all year where the rod as it is does.
 */
export function gapVaried(
  setting: RodSetting,
  line: { readonly id: string; readonly at: number },
  { inYear, solve }: { readonly inYear: boolean; readonly solve: (problem: RodProblem) => RodOutcome },
): Choice | undefined {
  const { project, spec } = setting.task;
  const [lead] = spec.leads;
  const added = lead && addLine({ project, document: project }, { face: lead, y: line.at });
  const changed = added && settingAfter(setting, added.operations);
  const problem = changed && problemWith(changed, inYear ? "year" : "given");
  if (!problem) return undefined;
  const above = problem.segments.findIndex(({ from }) => sameLength(from, line.at));
  const outcome = above > 0 ? solve(problem) : undefined;
  if (outcome?.kind !== "solved") return undefined;
  const { segments } = outcome.best;
  const [under, over] = [segments[above - 1]?.gap ?? 0, segments[above]?.gap ?? 0];
  return {
    says: message("setout.rod.vary-gap", { line: line.id, under, over }),
    edit: added.operations,
  };
}
