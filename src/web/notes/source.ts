/** Where a finding takes its limit from, in words. */
import type { Source } from "../../findings/finding.ts";
import type { Words } from "../words.ts";

export function sourceText({ kind, document, clause }: Source, { w }: Words): string {
  if (kind !== "document") return w(`page.source.${kind}`);
  return [document, clause].filter((part) => part !== undefined).join(", ");
}
