/** A revision that is not the latest, on the sheet to be looked at: its address, its name, and how it comes. */
import type { Message } from "../../text/message.ts";
import type { ServedDesign } from "../work/api.ts";
import type { Designer } from "../work/designer.ts";
import { fetchProject, fetchRevision } from "../work/kept-api.ts";

export interface Older {
  /** Of the server's list, or of the steps that this page alone holds. */
  readonly from: "server" | "page";
  readonly number: number;
  readonly says: Message;
  /** ISO 8601, UTC; absent for a step of this page. */
  readonly time?: string;
  /** Who made it; empty for whoever sat at the server's machine. */
  readonly who: string;
}

export interface RevisionAt {
  readonly id: string;
  readonly number: number;
}

const FRAGMENT = /^#revision\/([0-9a-f]{24})\/([1-9][0-9]{0,8})$/;

/** The fragment of a revision's address: whoever may read the project can open it. */
export function fragmentOf({ id, number }: RevisionAt): string {
  return `#revision/${id}/${number}`;
}

export function revisionAt(fragment: string): RevisionAt | undefined {
  const [, id, number] = FRAGMENT.exec(fragment) ?? [];
  return id === undefined ? undefined : { id, number: Number(number) };
}

/** The file's name with the revision in it, so that what is saved of it is not taken for the latest. */
export function olderName(file: string, number: number): string {
  return file.replace(/(\.outerleaf)?(\.json)?$/, (end) => `.revision-${number}${end}`);
}

/** Another project takes the sheet: the address names no revision any more. */
export function leaveAddress(): void {
  if (revisionAt(location.hash)) history.replaceState(null, "", location.pathname);
}

export type LookedAt =
  | { readonly kind: "older"; readonly coming: ServedDesign; readonly older: Older }
  /** It is the latest: nothing older is to be shown. */
  | { readonly kind: "latest" }
  /** Not kept, thinned out, or not for whoever asks. */
  | { readonly kind: "none" };

export async function fetchOlder({ id, number }: RevisionAt, designer: Designer): Promise<LookedAt> {
  const [project, revision] = await Promise.all([fetchProject(id), fetchRevision(id, number)]);
  if (!project || !revision) return { kind: "none" };
  if (project.revision.number === number) return { kind: "latest" };
  const { says, time, who, document } = revision;
  const coming = await designer.design({ name: olderName(project.name, number), document });
  return {
    kind: "older",
    coming: { ...coming, keptAs: id },
    older: { from: "server", number, says, time, who },
  };
}

/** Puts a revision on top as a new one; the newer ones stay in the list. */
export async function restoreRevision({ id, number }: RevisionAt): Promise<Restored> {
  const project = await fetchProject(id);
  if (!project) return { kind: "failed", says: undefined };
  try {
    const response = await fetch(`/api/projects/${id}/revisions/${number}/restore`, {
      method: "POST",
      headers: { "If-Match": `"${project.revision.tag}"` },
    });
    if (response.ok) return { kind: "restored" };
    const { error } = (await response.json()) as { error?: { message?: string } };
    return { kind: "failed", says: error?.message };
  } catch {
    return { kind: "failed", says: undefined };
  }
}

export type Restored =
  | { readonly kind: "restored" }
  /** With the server's own sentence about why. */
  | { readonly kind: "failed"; readonly says: string | undefined };
