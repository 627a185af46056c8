/** Findings that have a place on a face, as symbols there. */
import type { Finding } from "../../findings/finding.ts";
import { type Item, symbolOf } from "../model.ts";
import { layerName } from "../roles.ts";

/** Millimetres on paper. */
const SIZE = 3.2;

/** What of a finding is drawn. */
export type PlacedFinding = Pick<Finding, "code" | "outcome" | "provisional" | "where">;

/** Those that are drawn, with no more than is drawn of them. */
export function placedFindings(findings: readonly Finding[]): PlacedFinding[] {
  return findings.flatMap(({ code, outcome, provisional, where: { face, at } }) =>
    face !== undefined && at ? [{ code, outcome, provisional, where: { face, at } }] : [],
  );
}

/** What is to be settled; what holds is left to the notes. */
export function findingItems(findings: readonly PlacedFinding[], faceId: string): Item[] {
  return findings.flatMap((finding): Item[] => {
    const symbol = symbolOf(finding);
    const { at, face } = finding.where;
    if (!at || face !== faceId || !symbol || symbol === "pass" || symbol === "provisional") return [];
    return [{ kind: "symbol", layer: layerName("FINDNG"), of: finding.code, at, symbol, size: SIZE }];
  });
}
