/** What ranks one combination before another, and the sentence that says so. */
import { type Message, message } from "../../text/message.ts";
import type { PlaneMerit } from "./model.ts";

/** Looked at in this order; the first that differs decides. */
const MERIT_KEYS: readonly (keyof PlaneMerit)[] = [
  "broken",
  "packers",
  "planing",
  "cavityShort",
  "battenCost",
  "battens",
  "step",
  "packing",
  "changes",
  "plane",
];

export function compareMerits(a: PlaneMerit, b: PlaneMerit): number {
  const key = firstDifference(a, b);
  return key === undefined ? 0 : a[key] - b[key];
}

function firstDifference(a: PlaneMerit, b: PlaneMerit): keyof PlaneMerit | undefined {
  return MERIT_KEYS.find((key) => a[key] !== b[key]);
}

/** Where a combination stands against the first of those that pass. */
export function rankSaid(own: PlaneMerit, first: PlaneMerit | undefined): Message {
  if (first === undefined) return message("planes.rank.none");
  if (own === first) return message("planes.rank.first");
  const key = firstDifference(own, first);
  if (key === undefined) return message("planes.rank.equal");
  return message(`planes.rank.${key}`, { own: own[key], first: first[key] });
}
