/** Named rule sets on the cavity. The user picks one; there is no built-in truth among them. */

import type { Jurisdiction } from "./figure.ts";
import { type Catalogue, figureFiles } from "./files.ts";
import type { CavityRuleSet, FireStopRule } from "./schema/cavity-rules.ts";

export type { CavityRuleSet, FireStopRule } from "./schema/cavity-rules.ts";

/** A rule set by its id, such as `canada-nbc`. */
export function cavityRuleSet(id: string, from: Catalogue = figureFiles): CavityRuleSet | undefined {
  return from["cavity-rules"].ruleSets.find((entry) => entry.id === id);
}

export function cavityRuleSets(from: Catalogue = figureFiles): readonly CavityRuleSet[] {
  return from["cavity-rules"].ruleSets;
}

/** Rules on fire stops in the cavity of a jurisdiction; empty where none is known. */
export function fireStopRules(jurisdiction: Jurisdiction, from: Catalogue = figureFiles): FireStopRule[] {
  return from["cavity-rules"].fireStops.filter((entry) => entry.jurisdiction === jurisdiction);
}
