/** The mark that stands before a finding wherever one is printed, so that nothing is told by colour alone. */
import type { Finding, Outcome } from "./finding.ts";

export const OUTCOME_MARKS: Readonly<Record<Outcome, string>> = {
  fail: "■",
  attention: "▲",
  "cannot evaluate": "◇",
  pass: "✓",
  "not applicable": "–",
};

/** A pass that rests on a typical value or one from memory has a mark of its own. */
export function outcomeMark({ outcome, provisional }: Pick<Finding, "outcome" | "provisional">): string {
  return provisional ? "◌" : OUTCOME_MARKS[outcome];
}
