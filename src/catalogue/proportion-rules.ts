/** What sources allow of a board's width, gaps and batten centres. They disagree and stay side by side. */
import { type Catalogue, figureFiles, proportionRulesFile } from "./files.ts";
import type { BattenCentresRule, OpenJointRule, ProportionRule } from "./schema/proportion-rules.ts";

export type { BattenCentresRule, OpenJointRule, ProportionRule } from "./schema/proportion-rules.ts";

/** A rule on width and thickness by its id, such as `bs-8605-1`. */
export function proportionRule(id: string): ProportionRule | undefined {
  return proportionRulesFile.proportions.find((entry) => entry.id === id);
}

export function proportionRules(from: Catalogue = figureFiles): readonly ProportionRule[] {
  return from["proportion-rules"].proportions;
}

/** Every rule on the open joint, practice without a jurisdiction included. */
export function openJointRules(): readonly OpenJointRule[] {
  return proportionRulesFile.openJoints;
}

export function battenCentresRules(from: Catalogue = figureFiles): readonly BattenCentresRule[] {
  return from["proportion-rules"].battenCentres;
}
