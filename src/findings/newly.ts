/** What fails after a change and did not before. */
import type { Finding } from "./finding.ts";

/** Failures of the second list that the first does not have, told apart by code and place. */
export function newlyFailing(before: readonly Finding[], after: readonly Finding[]): Finding[] {
  const known = new Set(before.filter(isFailure).map(nameOf));
  return after.filter((one) => isFailure(one) && !known.has(nameOf(one)));
}

function isFailure({ outcome }: Finding): boolean {
  return outcome === "fail" || outcome === "cannot evaluate";
}

function nameOf({ code, outcome, where: { face, zone, opening, path } }: Finding): string {
  return JSON.stringify([code, outcome, face, zone, opening, path]);
}
