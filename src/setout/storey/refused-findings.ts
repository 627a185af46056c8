/** What is said of a rod that cannot be had, or not as the file asks for it. */
import { type Choice, type Finding, finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import type { RodOutcome } from "../rod/index.ts";
import type { FaultyRip, RodSetting } from "./task.ts";

export function impossibleFinding(
  setting: RodSetting,
  outcome: Extract<RodOutcome, { kind: "impossible" }>,
  at: { readonly path: string; readonly choices: readonly Choice[] },
): Finding {
  const rod = setting.task.spec.id;
  const [refused] = outcome.segments;
  const [choice] = at.choices;
  return finding({
    code: "S001",
    outcome: "fail",
    where: { path: at.path },
    says:
      refused?.nearestBelow && refused.nearestAbove
        ? message("setout.rod.impossible", {
            rod,
            segment: refused.id,
            below: refused.nearestBelow.gap,
            above: refused.nearestAbove.gap,
          })
        : message("setout.rod.impossible-plain", { rod }),
    ...(choice && { hint: choice.says }),
    ...(choice?.edit && { edit: choice.edit }),
    ...(at.choices.length > 0 && { choices: at.choices }),
    source: { kind: "common practice" },
  });
}

/** A rod that the exact search does not take on: shown, but neither proven possible nor impossible. */
export function unusableFinding(
  setting: RodSetting,
  outcome: Extract<RodOutcome, { kind: "unusable" }>,
  path: string,
): Finding {
  const rod = setting.task.spec.id;
  const isTooLarge = outcome.faults.some(({ code }) => code === "too-large");
  return finding({
    code: "S001",
    outcome: "cannot evaluate",
    where: { path },
    says: isTooLarge
      ? message("setout.rod.too-large", { rod })
      : message("setout.rod.unusable", {
          rod,
          faults: outcome.faults.map(({ code, field }) => `${code} (${field})`),
        }),
    ...(isTooLarge && { hint: message("setout.rod.too-large.hint") }),
    source: { kind: "common practice" },
  });
}

/** A ripped board that the file asks for and that cannot be laid; taking it out changes nothing that is drawn. */
export function ripFinding(setting: RodSetting, { index, why }: FaultyRip, rodPath: string): Finding {
  const path = `${rodPath}/rips/${index}`;
  const rip = setting.task.spec.rips?.[index];
  return finding({
    code: "S001",
    outcome: "fail",
    where: { path },
    says: message(`setout.rod.rip.${why}`, { width: rip?.width ?? 0, segment: rip?.segment ?? 0 }),
    hint: message("setout.rod.rip.take-out"),
    edit: [{ op: "remove", path }],
  });
}
