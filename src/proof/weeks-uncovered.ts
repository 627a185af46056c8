/** P017: weeks that the membrane stays bare, as planned, against its data sheet. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";
import { compared, holds, input } from "./working.ts";

export function weeksUncovered({ project }: ProofContext): Finding[] {
  const demand = project.site.weeksUncovered;
  const limit = project.limits.membrane?.maxWeeksUncovered;
  if (demand === undefined || !limit) {
    const path = demand === undefined ? "/site/weeksUncovered" : "/limits/membrane/maxWeeksUncovered";
    return [
      finding({
        code: "P017",
        outcome: "cannot evaluate",
        where: { path },
        says: message(demand === undefined ? "proof.weeks.no-plan" : "proof.weeks.no-limit"),
        ...(demand === undefined ? {} : { hint: message("proof.enter-data-sheet") }),
        source: { kind: "your data sheet" },
      }),
    ];
  }
  const within = holds("at most", { demand, limit: limit.value });
  return [
    finding({
      code: "P017",
      outcome: within ? "pass" : "fail",
      where: { path: "/site/weeksUncovered" },
      says: message(within ? "proof.weeks.within" : "proof.weeks.over", {
        weeks: demand,
        limit: limit.value,
      }),
      ...(within ? {} : { hint: message("proof.weeks.cover") }),
      ...compared("at most", { demand, limit: limit.value, unit: "weeks" }),
      working: {
        formula: "n ≤ n_max",
        inputs: [
          input("n", { meaning: "weeks", value: demand, unit: "weeks", basis: "given" }),
          input("n_max", { meaning: "most-weeks", value: limit.value, unit: "weeks", basis: limit.basis }),
        ],
        substituted: `${demand} ${within ? "≤" : ">"} ${limit.value}`,
      },
      source: { kind: "your data sheet" },
    }),
  ];
}
