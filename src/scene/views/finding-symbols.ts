/** Findings that have a place on a face, as symbols there. */
import type { Finding } from "../../findings/finding.ts";
import { type Item, symbolOf } from "../model.ts";
import { layerName } from "../roles.ts";

/** Millimetres on paper. */
const SIZE = 3.2;

/** What is to be settled; what holds is left to the notes. */
export function findingItems(findings: readonly Finding[], faceId: string): Item[] {
  return findings.flatMap((finding): Item[] => {
    const symbol = symbolOf(finding);
    const { at, face } = finding.where;
    if (!at || face !== faceId || !symbol || symbol === "pass" || symbol === "provisional") return [];
    return [{ kind: "symbol", layer: layerName("FINDNG"), of: finding.code, at, symbol, size: SIZE }];
  });
}
