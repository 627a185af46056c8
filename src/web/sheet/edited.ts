/** What an edit makes of the document that is the newest when it comes. */
import { applyPatch, type PatchResult } from "../../project/edit.ts";
import { mergeDocuments } from "../../project/merge.ts";
import type { Edit } from "./use-project.ts";

/** @param onto the newest document; what it has beyond the one that the edit was made to is kept */
export function edited(
  { operations, made: own }: Pick<Edit, "operations" | "made">,
  onto: unknown,
): PatchResult {
  const made = own ?? onto;
  const patched = applyPatch(made, operations);
  if (!patched.ok || made === onto) return patched;
  const versions = { base: made, mine: patched.document, other: onto };
  return { ok: true, document: mergeDocuments(versions).document };
}
