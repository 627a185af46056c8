/** The server's kept projects, as the page asks for them. What cannot be reached is undefined. */
import type { Message } from "../../text/message.ts";
import { fetchJson } from "./api.ts";

export interface RevisionInfo {
  readonly number: number;
  /** Names this very revision: what a writer must have seen. */
  readonly tag: string;
  readonly hash: string;
  /** The edit that led here. */
  readonly says: Message;
  /** ISO 8601, UTC. */
  readonly time: string;
  /** The name of who edited; empty for whoever sat at the server's machine. */
  readonly who: string;
}

export interface Revision extends RevisionInfo {
  readonly document: unknown;
}

export interface KeptProject {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly latest: RevisionInfo;
}

export interface KeptList {
  /** Whether the server has a database at all. */
  readonly store: boolean;
  readonly projects: readonly KeptProject[];
}

export interface OpenedProject {
  readonly id: string;
  readonly name: string;
  readonly revision: Revision;
  /** Whether the file that was asked about is or was one of its revisions. */
  readonly knowsFile?: boolean;
}

export type PutAnswer =
  | { readonly kind: "kept"; readonly revision: RevisionInfo }
  | { readonly kind: "conflict"; readonly latest: RevisionInfo | undefined }
  /** Not now: no server, no database, a full disk. */
  | { readonly kind: "failed" }
  /** Never: the server does not take this document. */
  | { readonly kind: "refused" };

export const fetchKept = (): Promise<KeptList | undefined> => fetchJson("/api/projects");

/** @param file hash of a document that the project may know */
export const fetchProject = (id: string, file?: string): Promise<OpenedProject | undefined> =>
  fetchJson(`/api/projects/${id}${file === undefined ? "" : `?file=${file}`}`);

export async function fetchRevisions(id: string): Promise<readonly RevisionInfo[] | undefined> {
  return (await fetchJson<{ revisions: readonly RevisionInfo[] }>(`/api/projects/${id}/revisions`))
    ?.revisions;
}

export async function fetchRevision(id: string, number: number): Promise<Revision | undefined> {
  return (await fetchJson<{ revision: Revision }>(`/api/projects/${id}/revisions/${number}`))?.revision;
}

/** @param onto tag of the revision that it was made from; none for the first */
export async function putRevision(
  id: string,
  body: { readonly name: string; readonly document: unknown; readonly says: Message },
  onto: string | undefined,
): Promise<PutAnswer> {
  try {
    const response = await fetch(`/api/projects/${id}`, {
      method: "PUT",
      headers: {
        "Content-Type": "application/json",
        ...(onto === undefined ? { "If-None-Match": "*" } : { "If-Match": `"${onto}"` }),
      },
      body: JSON.stringify(body),
    });
    if (response.ok) return { kind: "kept", revision: (await response.json()).revision };
    if (response.status === 409) return { kind: "conflict", latest: (await response.json()).error.latest };
    return { kind: response.status >= 500 ? "failed" : "refused" };
  } catch {
    return { kind: "failed" };
  }
}

/** True where it is gone. */
export async function removeProject(id: string, name: string): Promise<boolean> {
  try {
    const response = await fetch(`/api/projects/${id}`, {
      method: "DELETE",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ name }),
    });
    return response.ok;
  } catch {
    return false;
  }
}
