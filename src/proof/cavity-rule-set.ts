/** P035: depth and vents of the cavity against the one rule set that the user has chosen. */
import type { ChosenRules, RuleValue } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { ruleName } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

const PATH = "/limits/cavityRules";
const CM2_PER_M_OF_MM = 10;

export function cavityRuleSet(context: FaceContext): Finding[] {
  const rules = context.demands.chosenRules;
  if (!rules) {
    return [
      finding({
        code: "P035",
        outcome: "not applicable",
        where: { path: PATH },
        says: message("proof.chosen.none"),
        source: { kind: "your project" },
      }),
    ];
  }
  return context.zones.flatMap((view) => [...depth(rules, view), ...vents(context, rules, view)]);
}

function depth(rules: ChosenRules, view: ZoneView): Finding[] {
  if (!view.plane || view.pieces.length === 0) return [];
  const demand = view.plane.cavity;
  const byHeight = rules.perHeight && {
    rule: rules.perHeight.rule,
    value: Math.min(
      rules.perHeight.most,
      Math.max(
        rules.perHeight.least,
        (rules.perHeight.rule.value * intervalLength(polygonBounds(view.zone.region).y)) / 1000,
      ),
    ),
  };
  const limit = Math.max(rules.depth.value, byHeight?.value ?? 0);
  const enough = holds("at least", { demand, limit });
  return [
    finding({
      code: "P035",
      outcome: enough ? "pass" : "fail",
      where: { path: PATH, ...view.where },
      says: message(enough ? "proof.chosen.deep" : "proof.chosen.shallow", {
        depth: demand,
        least: limit,
        rule: ruleName(rules.id),
      }),
      ...(enough ? {} : { hint: message("proof.cavity.deepen") }),
      ...compared("at least", { demand, limit, unit: "mm" }),
      working: {
        formula: "c ≥ c_r",
        inputs: [
          input("c", { meaning: "cavity", value: demand, unit: "mm", basis: "derived" }),
          input("c_r", { meaning: "chosen-depth", value: limit, unit: "mm", basis: rules.depth.basis }),
        ],
        substituted: `${written(demand)} ${enough ? "≥" : "<"} ${written(limit)}`,
      },
      source: rules.depth.source,
    }),
  ];
}

/** The least vent in or out, net of mesh and battens, less what dirt takes, against what the set asks. */
function vents({ project }: FaceContext, rules: ChosenRules, view: ZoneView): Finding[] {
  const least = greatest(view.vents, ({ netCm2PerM }) => -netCm2PerM);
  if (!least || !view.plane) return [];
  const asked = askedArea(rules, view.plane.cavity);
  const left = project.limits.ventsLeftOpen;
  const demand = least.netCm2PerM * (left?.value ?? 1);
  if (!asked) {
    return [
      finding({
        code: "P035",
        outcome: "not applicable",
        where: { path: PATH, ...view.where },
        says: message("proof.chosen.no-vents", { net: demand, rule: ruleName(rules.id) }),
        source: rules.depth.source,
      }),
    ];
  }
  const enough = holds("at least", { demand, limit: asked.value });
  return [
    finding({
      code: "P035",
      outcome: enough ? "pass" : "fail",
      where: { path: PATH, at: [(least.x[0] + least.x[1]) / 2, least.y], ...view.where },
      says: message(enough ? "proof.chosen.vented" : "proof.chosen.starved", {
        net: demand,
        least: asked.value,
        rule: ruleName(rules.id),
      }),
      ...(enough ? {} : { hint: message("proof.chosen.open-up") }),
      ...compared("at least", { demand, limit: asked.value, unit: "cm²/m" }),
      working: {
        formula: "A_n·k ≥ A_r",
        inputs: [
          input("A_n", { meaning: "net-vent", value: least.netCm2PerM, unit: "cm²/m", basis: "derived" }),
          // New mesh is all open; how dirty it gets is for the user to say.
          input("k", {
            meaning: "left-open",
            value: left?.value ?? 1,
            unit: "1",
            basis: left?.basis ?? "typical",
          }),
          input("A_r", { meaning: "least-vent", value: asked.value, unit: "cm²/m", basis: asked.basis }),
        ],
        substituted: `${written(least.netCm2PerM)} × ${written(left?.value ?? 1, 2)} = ${written(demand)} ${enough ? "≥" : "<"} ${written(asked.value)}`,
      },
      source: asked.source,
    }),
  ];
}

/** A set may ask an area, a share of the cavity's section, or both: the greater governs. */
function askedArea({ ventArea, ventShare }: ChosenRules, cavityMm: number): RuleValue | undefined {
  const byShare = ventShare && {
    ...ventShare,
    value: (ventShare.value / 100) * cavityMm * CM2_PER_M_OF_MM,
  };
  if (!ventArea || !byShare) return ventArea ?? byShare;
  return byShare.value > ventArea.value ? byShare : ventArea;
}
