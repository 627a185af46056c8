/** What stands beside the documents of an issue: which there are, what they were made from, and a sum over each. */
import type { Reader } from "../../text/say.ts";

export const MANIFEST = "manifest.json";
/** Marks a folder as one that may be written anew. */
export const WRITTEN_BY = "outerleaf issue";

export interface NamedSum {
  readonly name: string;
  /** Of the bytes, in hexadecimal. */
  readonly sha256: string;
}

export interface ManifestDocument extends NamedSum {
  readonly bytes: number;
}

/** What a manifest says beside its list of documents. */
export interface ManifestHead extends Pick<Reader, "language" | "units"> {
  /** Of the program. */
  readonly version: string;
  readonly project: string;
  readonly revision: string;
  /** The project file. */
  readonly input: NamedSum;
  /** A patch that was applied to it first. */
  readonly edit?: NamedSum | undefined;
}

export interface Manifest extends ManifestHead {
  readonly schemaVersion: 1;
  readonly writtenBy: typeof WRITTEN_BY;
  readonly documents: readonly ManifestDocument[];
}

export function manifestOf(head: ManifestHead, documents: readonly ManifestDocument[]): Manifest {
  return { schemaVersion: 1, writtenBy: WRITTEN_BY, ...head, documents };
}
