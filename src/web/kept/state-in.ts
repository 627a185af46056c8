/** What a file holds of the project that is on the sheet. */
import { readProject } from "../../project/read.ts";
import { type Change, changesOf } from "../../project/versions.ts";

export interface OtherState {
  readonly document: unknown;
  readonly changes: readonly Change[];
}

/** Undefined where the file is another project, is the same throughout, or is none that can be read. */
export function stateIn(
  text: string,
  file: string,
  { title, document }: { readonly title: string; readonly document: unknown },
): OtherState | undefined {
  const read = readProject(text, file);
  if (!read.ok || read.project.title !== title) return undefined;
  const changes = changesOf(document, read.document);
  return changes.length > 0 ? { document: read.document, changes } : undefined;
}
