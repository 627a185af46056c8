/** The rule set that the user has chosen for the cavity: what it asks of depth and vents, and what it does not say. */
import { cavityRuleSet } from "../catalogue/cavity-rules.ts";
import { highest, lowest } from "../catalogue/figure.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import type { Project } from "../project/schema/project.ts";
import { namesOf, type RuleValue, ruleValue } from "./rule-value.ts";

export interface ChosenRules {
  readonly id: string;
  /** Least depth behind open joints (mm). */
  readonly depth: RuleValue;
  /** Depth asked for each metre of the cavity's height (mm/m), held between least and most (mm). */
  readonly perHeight: { readonly rule: RuleValue; readonly least: number; readonly most: number } | undefined;
  /** Least net area in, and again out (cm²/m). */
  readonly ventArea: RuleValue | undefined;
  /** Least net area as a share of the cavity's section (%). */
  readonly ventShare: RuleValue | undefined;
}

/** A rule that its span holds as well. */
function withRange(rule: RuleValue, range: object): RuleValue {
  return {
    ...rule,
    source: { ...rule.source, figures: [...(rule.source.figures ?? []), ...namesOf(range)] },
  };
}

/** Undefined where the project names none: there is no built-in truth among the sets. */
export function chosenRules(project: Project): ChosenRules | undefined {
  const set = cavityRuleSet(project.limits.cavityRules ?? "", catalogueWith(project.figures));
  if (!set) return undefined;
  const value = (figure: Parameters<typeof ruleValue>[0]): RuleValue =>
    ruleValue(figure, { id: set.id, jurisdiction: set.jurisdiction, project });
  return {
    id: set.id,
    depth: value(set.depthOpenJoint ?? set.depth),
    perHeight:
      set.depthPerHeight && set.depthRange
        ? {
            rule: withRange(value(set.depthPerHeight), set.depthRange),
            least: lowest(set.depthRange) ?? 0,
            most: highest(set.depthRange) ?? Number.POSITIVE_INFINITY,
          }
        : undefined,
    ventArea: set.ventArea ? value(set.ventArea) : undefined,
    ventShare: set.ventShareOfCavity ? value(set.ventShareOfCavity) : undefined,
  };
}
