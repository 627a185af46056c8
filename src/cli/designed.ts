/** A design as a command tells it. */
import { type Design, design, withStepChoices } from "../design.ts";
import type { Project } from "../project/schema/project.ts";
import type { LightInput } from "../proof/light/input.ts";

export function designed(project: Project, light?: LightInput): Design {
  return withStepChoices(design(project, light && { light }));
}
