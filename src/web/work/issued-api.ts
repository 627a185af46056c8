/** Sets of documents that went out, as the server keeps them. */
import type { Reader } from "../../text/say.ts";
import { fetchJson } from "./api.ts";
import { hashOf } from "./hash.ts";
import { fetchKept } from "./kept-api.ts";
import { writeDrawings } from "./pdf.ts";

export interface IssuedSet {
  readonly number: number;
  /** As printed: A, B … */
  readonly revision: string;
  readonly note: string;
  readonly who: string;
  /** ISO 8601, UTC. */
  readonly time: string;
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
}

/** The latest in front; undefined where no server keeps any. */
export async function fetchIssued(project: string): Promise<readonly IssuedSet[] | undefined> {
  // A server without a database would refuse, and a browser writes that among its errors.
  if (!(await fetchKept())?.store) return undefined;
  return (await fetchJson<{ issued: readonly IssuedSet[] }>(`/api/projects/${project}/issued`))?.issued;
}

export interface Issue {
  /** The project's id on the server. */
  readonly project: string;
  /** Of the project file. */
  readonly name: string;
  /** With the record of the revision. */
  readonly document: unknown;
  readonly reader: Reader;
  readonly revision: string;
  readonly note: string;
}

/** The state that the set is made of may still be on its way to the server. */
const TRIES = 10;
const APART_MS = 1500;

/** Makes the documents and has the server freeze them; false where it could not. */
export async function freezeIssue({
  project,
  name,
  document,
  reader,
  revision,
  note,
}: Issue): Promise<boolean> {
  const archive = await writeDrawings({ name, document, reader, what: "archive" });
  if (!archive) return false;
  const query = new URLSearchParams({ revision, note, hash: await hashOf(document) });
  for (let tried = 0; tried < TRIES; tried++) {
    try {
      const answer = await fetch(`/api/projects/${project}/issued?${query}`, {
        method: "POST",
        headers: { "Content-Type": "application/zip" },
        body: archive,
      });
      if (answer.ok) return true;
      if (answer.status !== 409) return false;
    } catch {
      return false;
    }
    await new Promise((resolve) => setTimeout(resolve, APART_MS));
  }
  return false;
}
