/** A design as a command tells it: where zones stand apart, with what would bring them into one plane. */
import { type Design, design } from "../design.ts";
import type { Finding } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";
import type { LightInput } from "../proof/light/input.ts";
import { stepChoices } from "../setout/step-choices.ts";

/** What `design` comes to; only where a step fails does it take longer. */
export function designed(project: Project, light?: LightInput): Design {
  const done = design(project, light && { light });
  const offered = stepChoices(done);
  if (offered.size === 0) return done;
  const told = (findings: readonly Finding[]): Finding[] => findings.map((one) => offered.get(one) ?? one);
  return {
    ...done,
    facade: { ...done.facade, findings: told(done.facade.findings) },
    findings: told(done.findings),
  };
}
