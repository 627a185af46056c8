/** Least thickness of boards by named rules. */
import { catalogueWith } from "../catalogue/own-figures.ts";
import { proportionRules } from "../catalogue/proportion-rules.ts";
import type { Project } from "../project/schema/project.ts";
import { ownFirst, type RuleValue, ruleValue } from "./rule-value.ts";

export function boardThickness(project: Project): RuleValue[] {
  const rules = proportionRules(catalogueWith(project.figures));
  return ownFirst(
    rules.flatMap(({ id, jurisdiction, leastThickness }) =>
      leastThickness ? [ruleValue(leastThickness, { id: `thickness-${id}`, jurisdiction, project })] : [],
    ),
  );
}
