/** Words for rule sets that ask more than a facade gives. */
import type { RuleValue } from "../codes/demands.ts";
import { type Message, message } from "../text/message.ts";

/** `National Building Code of Canada 10 mm`, one message a rule; the unit chooses the template. */
export function rulesAsking(rules: readonly RuleValue[], unit: "mm" | "cm2PerM"): Message[] {
  return rules.map(({ id, value }) => message(`proof.rule-asks.${unit}`, { rule: ruleName(id), value }));
}

export function ruleName(id: string): Message {
  return message(`proof.rule.${id}`);
}
