/** An example, edited: what the commands make of the document is read again as a file would be. */
import { readFileSync } from "node:fs";
import { applyPatch } from "../../src/project/edit.ts";
import type { Change, Source } from "../../src/project/editing/change.ts";
import { readDocument } from "../../src/project/read.ts";

export function exampleSource(name: string): Source {
  return sourceOf(JSON.parse(readFileSync(`examples/${name}.outerleaf.json`, "utf8")));
}

/** The project of a document, which must be without fault. */
export function sourceOf(document: unknown): Source {
  const read = readDocument(document, "edited");
  if (read.ok) return read;
  throw new Error(read.findings.map(({ code, where }) => `${code} ${where.path}`).join(", "));
}

/** The document with a change made to it. */
export function changed({ document }: Source, change: Change | undefined): unknown {
  if (!change) throw new Error("there is no change");
  const patched = applyPatch(document, change.operations);
  if (!patched.ok) throw new Error(`refused: ${change.operations.map(({ path }) => path).join(", ")}`);
  return patched.document;
}

/** The project after a change, which must be without fault. */
export function edited(source: Source, change: Change | undefined): Source {
  return sourceOf(changed(source, change));
}

/** The codes of what is said against a change. */
export function refusals(source: Source, change: Change | undefined): string[] {
  const read = readDocument(changed(source, change), "edited");
  return read.ok ? [] : read.findings.map(({ code }) => code);
}
