/** What a kept project and its revisions look like from outside. */
import { createHash } from "node:crypto";
import type { Message } from "../text/message.ts";

export interface RevisionInfo {
  readonly number: number;
  /** The revision that it was made from; none for the first. */
  readonly parent: number | null;
  /** SHA-256 of the document's JSON without spaces, in hexadecimal. */
  readonly hash: string;
  /** Names this very revision, also where a project was removed and begun again: what a writer must have seen. */
  readonly tag: string;
  /** The edit that led here. */
  readonly says: Message;
  /** ISO 8601, UTC. */
  readonly time: string;
  /** The name of who edited; empty for whoever sat at this machine. */
  readonly who: string;
}

export interface Revision extends RevisionInfo {
  /** Brought up to the present version of the file's schema. */
  readonly document: unknown;
}

export interface KeptProject {
  readonly id: string;
  readonly name: string;
  readonly title: string;
  readonly latest: RevisionInfo;
}

export interface NewRevision {
  /** The file's name. */
  readonly name: string;
  readonly title: string;
  readonly document: unknown;
  readonly says: Message;
  readonly time: string;
  readonly who?: string;
  /** The tag of the latest revision as the writer knows it; undefined where there should be none. */
  readonly onto: string | undefined;
}

export type PutAnswer =
  /** `fresh` is false where the latest revision holds the same document already. */
  | { readonly kind: "kept"; readonly revision: RevisionInfo; readonly fresh: boolean }
  /** Someone else wrote meanwhile, or removed the project. */
  | { readonly kind: "conflict"; readonly latest: RevisionInfo | undefined };

export function hashOf(text: string | Uint8Array): string {
  return createHash("sha256").update(text).digest("hex");
}

export function tagOf({ number, hash }: Pick<RevisionInfo, "number" | "hash">): string {
  return `${number}.${hash.slice(0, 16)}`;
}
