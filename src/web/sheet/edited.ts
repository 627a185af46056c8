/** What an edit makes of the document that is the newest when it comes. */
import type { PatchOperation } from "../../findings/finding.ts";
import { applyPatch, type PatchResult } from "../../project/edit.ts";
import { mergeDocuments } from "../../project/merge.ts";

interface Made {
  readonly operations: readonly PatchOperation[];
  /** The document that it was made to; absent: the newest. */
  readonly made?: unknown;
}

/** @param onto the newest document; what it has beyond the one that the edit was made to is kept */
export function edited({ operations, made: own }: Made, onto: unknown): PatchResult {
  const made = own ?? onto;
  const patched = applyPatch(made, operations);
  if (!patched.ok || made === onto) return patched;
  const versions = { base: made, mine: patched.document, other: onto };
  return { ok: true, document: mergeDocuments(versions).document };
}
