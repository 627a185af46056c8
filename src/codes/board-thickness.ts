/** Least thickness of boards by named rules. */
import { proportionRules } from "../catalogue/proportion-rules.ts";
import type { Project } from "../project/schema/project.ts";
import { jurisdictionOf, ownFirst, type RuleValue, ruleValue } from "./rule-value.ts";

/** Reaction to fire of solid wood cladding over a ventilated cavity without a test. */
const FIRE_CLASS: Omit<RuleValue, "own"> = {
  id: "fire-class-wood",
  jurisdiction: "germany",
  value: 18,
  basis: "memory",
  source: { kind: "document", document: "EN 14915, class D-s2,d0 without a test (from memory)" },
};

export function boardThickness(project: Project): RuleValue[] {
  const rules = proportionRules().flatMap(({ id, jurisdiction, leastThickness }) =>
    leastThickness ? [ruleValue(leastThickness, { id: `thickness-${id}`, jurisdiction, project })] : [],
  );
  return ownFirst([...rules, { ...FIRE_CLASS, own: FIRE_CLASS.jurisdiction === jurisdictionOf(project) }]);
}
