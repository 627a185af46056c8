/** Named rule sets on the cavity. The user picks one; there is no built-in truth among them. */

import type { Jurisdiction } from "./figure.ts";
import { cavityRulesFile } from "./files.ts";
import type { CavityRuleSet, FireStopRule } from "./schema/cavity-rules.ts";

export type { CavityRuleSet, FireStopRule } from "./schema/cavity-rules.ts";

/** A rule set by its id, such as `canada-nbc`. */
export function cavityRuleSet(id: string): CavityRuleSet | undefined {
  return cavityRulesFile.ruleSets.find((entry) => entry.id === id);
}

export function cavityRuleSets(): readonly CavityRuleSet[] {
  return cavityRulesFile.ruleSets;
}

/** Rules on fire stops in the cavity of a jurisdiction; empty where none is known. */
export function fireStopRules(jurisdiction: Jurisdiction): FireStopRule[] {
  return cavityRulesFile.fireStops.filter((entry) => entry.jurisdiction === jurisdiction);
}
