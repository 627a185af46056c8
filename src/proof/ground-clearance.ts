/** P005: the cladding's lowest edge above the ground, by the rule of the place; rules of other places beside it. */
import type { RuleValue } from "../codes/demands.ts";
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { type BaseHeight, baseHeight } from "./base-height.ts";
import type { ProofContext, ZoneView } from "./context.ts";
import { ruleName, rulesAsking } from "./rules-asking.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

export function groundClearance(context: ProofContext): Finding[] {
  const placed = context.zones.flatMap((view) => {
    const base = baseHeight(view);
    return base ? [{ view, base }] : [];
  });
  const own = context.demands.groundClearance.find((rule) => rule.own);
  if (!own) return withoutRule(context, placed);
  return placed.flatMap((one) => [againstOwn(own, one), ...asksMore(context, one)]);
}

interface Placed {
  readonly view: ZoneView;
  readonly base: BaseHeight;
}

/** Once for the whole building: it is the place's rule that is missing. */
function withoutRule({ demands }: ProofContext, placed: readonly Placed[]): Finding[] {
  const lowest = greatest(placed, ({ base }) => -base.heightMm);
  if (!lowest) return [];
  const { view, base } = lowest;
  return [
    finding({
      code: "P005",
      outcome: "cannot evaluate",
      where: { path: "/site/jurisdiction", marks: [base.mark], ...view.where },
      says: message("proof.ground.no-rule", {
        height: base.heightMm,
        rules: rulesAsking(demands.groundClearance, "mm"),
      }),
      hint: message("proof.ask-local-code"),
      source: { kind: "common practice" },
    }),
  ];
}

function againstOwn(own: RuleValue, { view, base }: Placed): Finding {
  const where = { path: `${view.facePath}/ground`, marks: [base.mark], ...view.where };
  const demand = base.heightMm;
  const clear = holds("at least", { demand, limit: own.value });
  return finding({
    code: "P005",
    outcome: clear ? "pass" : "fail",
    where,
    says: message(clear ? "proof.ground.clear" : "proof.ground.low", {
      height: demand,
      least: own.value,
      rule: ruleName(own.id),
    }),
    ...(clear ? {} : { hint: message("proof.ground.raise") }),
    ...compared("at least", { demand, limit: own.value, unit: "mm" }),
    working: {
      formula: "h ≥ h_min",
      inputs: [
        input("h", { meaning: "base-height", value: demand, unit: "mm", basis: "derived" }),
        input("h_min", { meaning: "least-base-height", value: own.value, unit: "mm", basis: own.basis }),
      ],
      substituted: `${written(demand)} ${clear ? "≥" : "<"} ${own.value}`,
    },
    source: own.source,
  });
}

/** Most of the rules elsewhere protect timber: sheets are held to the place's own alone. */
function asksMore({ demands }: ProofContext, { view, base }: Placed): Finding[] {
  if (view.cladding.kind !== "boards") return [];
  const asking = demands.groundClearance.filter(
    ({ own, value }) => !own && !holds("at least", { demand: base.heightMm, limit: value }),
  );
  const [first, ...rest] = asking;
  if (!first) return [];
  const most = rest.reduce((a, b) => (b.value > a.value ? b : a), first);
  return [
    finding({
      code: "P005",
      outcome: "attention",
      where: { path: `${view.facePath}/ground`, marks: [base.mark], ...view.where },
      says: message("proof.ground.others", { height: base.heightMm, rules: rulesAsking(asking, "mm") }),
      hint: message("proof.ground.raise"),
      ...compared("at least", { demand: base.heightMm, limit: most.value, unit: "mm" }),
      source: most.source,
    }),
  ];
}
