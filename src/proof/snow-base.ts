/** P006: lying snow against the cladding's base. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { baseHeight } from "./base-height.ts";
import type { ProofContext } from "./context.ts";
import { compared, holds, input, written } from "./working.ts";

export function snowBase({ project, zones }: ProofContext): Finding[] {
  const snow = project.site.climate?.snowDepthMm;
  const path = "/site/climate/snowDepthMm";
  if (!snow) {
    return [
      finding({
        code: "P006",
        outcome: "cannot evaluate",
        where: { path },
        says: message("proof.snow.no-depth"),
        hint: message("proof.snow.enter-depth"),
        source: { kind: "common practice" },
      }),
    ];
  }
  const limit = Math.max(...snow.values);
  const month = message(`proof.month.${snow.values.indexOf(limit) + 1}`);
  return zones.flatMap((view) => {
    const base = baseHeight(view);
    if (!base) return [];
    const clear = holds("at least", { demand: base.heightMm, limit });
    return [
      finding({
        code: "P006",
        outcome: clear ? "pass" : "attention",
        where: { path, marks: [base.mark], ...view.where },
        says: message(clear ? "proof.snow.under" : "proof.snow.over", {
          snow: limit,
          height: base.heightMm,
          month,
        }),
        ...(clear ? {} : { hint: message("proof.snow.keep-clear") }),
        ...compared("at least", { demand: base.heightMm, limit, unit: "mm" }),
        working: {
          formula: "h ≥ d_s",
          inputs: [
            input("h", { meaning: "base-height", value: base.heightMm, unit: "mm", basis: "derived" }),
            input("d_s", { meaning: "snow-depth", value: limit, unit: "mm", basis: snow.basis }),
          ],
          substituted: `${written(base.heightMm)} ${clear ? "≥" : "<"} ${limit}`,
        },
        source: { kind: "common practice" },
      }),
    ];
  });
}
