/** Cuts a facade and tells whoever watches what the plan so far costs. */
import { closenessOf } from "../cutting/facade/closeness.ts";
import type { CutOutcome } from "../cutting/facade/cut-facade.ts";
import { facadePlans, type PlanSoFar } from "../cutting/facade/facade-plans.ts";
import type { Project } from "../project/schema/project.ts";
import type { Facade } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { Job } from "./job.ts";

/** Milliseconds from one plan that is told of to the next. */
const APART = 200;

/** The plan that `cutFacade` gives. */
export function cutOnTheWay(
  { io, progress }: Pick<Job, "io" | "progress">,
  project: Project,
  facade: Facade,
): CutOutcome {
  progress(message("cli.doing.cut"));
  const { currency } = project.stock;
  let told: PlanSoFar | undefined;
  let due = io.watched ? performance.now() + APART : Number.POSITIVE_INFINITY;
  const plans = facadePlans(project, facade);
  for (let next = plans.next(); ; next = plans.next()) {
    if (next.done) return next.value;
    if (next.value === told || performance.now() < due) continue;
    told = next.value;
    const { plan } = told();
    if (plan) {
      const { costIn, cost, bound } = closenessOf(plan);
      const amount = (value: number) => message(`schedule.amount.${costIn}`, { value, currency });
      progress(message("cli.doing.cut-so-far", { cost: amount(cost), bound: amount(bound) }));
    }
    due = performance.now() + APART;
  }
}
