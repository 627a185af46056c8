/** What taking a file in comes to: the project's document as it would be, and a sentence for each thing that is then otherwise. */
import type { Finding } from "../../findings/finding.ts";
import type { Message } from "../../text/message.ts";
import { applyPatch } from "../edit.ts";
import type { Change } from "../editing/change.ts";
import { readDocument } from "../read.ts";

export type Taken =
  | {
      readonly ok: true;
      /** The edit of the project that it went into; none where a project is begun. */
      readonly change?: Change;
      readonly document: unknown;
      readonly tells: readonly Message[];
      /** What deserves attention and hinders nothing. */
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Tries a change on a document: all of it or nothing, and nothing where the project could not be read any more. */
export function tried(
  { document, name }: { readonly document: unknown; readonly name: string },
  { change, tells, findings }: { change: Change; tells: readonly Message[]; findings: readonly Finding[] },
): Taken {
  const patched = applyPatch(document, change.operations);
  if (!patched.ok) return patched;
  const again = readDocument(patched.document, name);
  if (!again.ok) return { ok: false, findings: [...findings, ...again.findings] };
  return { ok: true, change, document: patched.document, tells, findings };
}
