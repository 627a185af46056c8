/** Every sourced record of the catalogue with the place it stands in, for checks and for the page of sources. */

import type { AnyFigure, Basis, Statement } from "./figure.ts";
import { isUnconfirmed } from "./figure.ts";
import { figureFiles } from "./files.ts";

/** Anything in `data/` that names a source and a basis: a figure, a statement or a row of classes. */
export interface SourcedRecord {
  /** Name of the file in `data/`, without its ending. */
  file: string;
  /** Where in the file: keys, and what names an entry of a list. */
  path: string;
  source: string;
  basis: Basis;
  record: AnyFigure | Statement | { source: string; basis: Basis };
}

interface Sourced {
  source: string;
  basis: Basis;
}

export function isSourced(node: object): node is Sourced {
  return "source" in node && "basis" in node;
}

/** What an entry of a list is called in a path: its id, or its jurisdiction and kind, or its number. */
export function label(entry: unknown, index: number): string {
  if (typeof entry !== "object" || entry === null) return String(index);
  if ("id" in entry) return String(entry.id);
  return "jurisdiction" in entry && "kind" in entry ? `${entry.jurisdiction}-${entry.kind}` : String(index);
}

function collect(node: unknown, place: { file: string; path: string }, found: SourcedRecord[]): void {
  if (typeof node !== "object" || node === null) return;
  if (isSourced(node)) {
    found.push({ ...place, source: node.source, basis: node.basis, record: node });
    return;
  }
  const children = Array.isArray(node)
    ? node.map((entry, index) => [label(entry, index), entry] as const)
    : Object.entries(node);
  for (const [key, child] of children) {
    collect(child, { file: place.file, path: place.path === "" ? key : `${place.path}.${key}` }, found);
  }
}

/** All sourced records, in the order of the files. */
export function sourcedRecords(): SourcedRecord[] {
  const found: SourcedRecord[] = [];
  for (const [file, data] of Object.entries(figureFiles)) collect(data, { file, path: "" }, found);
  return found;
}

/** The records nobody has confirmed: remembered or invented. A result that rests on one is provisional. */
export function unconfirmed(): SourcedRecord[] {
  return sourcedRecords().filter((entry) => isUnconfirmed(entry));
}
