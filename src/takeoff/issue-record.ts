/** The record of an issue: what the project file keeps of a revision when it goes out. */
import type { Project } from "../project/schema/project.ts";
import type { Facade } from "../setout/facade.ts";
import { changesSince, issueState } from "./issue-state.ts";

type Issued = NonNullable<Project["issued"]>;

export interface IssueEntry {
  readonly revision: string;
  /** ISO 8601 date. */
  readonly when: string;
  readonly note: string;
  readonly who?: string;
}

/** The record with a further revision; undefined where one of that name went out before. */
export function issuedWith(
  before: Project["issued"],
  facade: Pick<Facade, "faces">,
  entry: IssueEntry,
): Issued | undefined {
  if (before?.revisions.some(({ revision }) => revision === entry.revision)) return undefined;
  const changes = before && changesSince(before.pieces, facade);
  return {
    ...before,
    revisions: [
      ...(before?.revisions ?? []),
      { ...entry, ...(changes && { changed: [...changes.changed], gone: [...changes.gone] }) },
    ],
    pieces: issueState(facade),
  };
}

/** After A comes B, after Z AA; a number is counted on. */
export function nextRevision(before: Project["issued"]): string {
  const last = before?.revisions.at(-1)?.revision;
  if (last === undefined) return "A";
  if (/^\d+$/.test(last)) return String(Number(last) + 1);
  const letters = /^[A-Z]+$/.test(last) ? last : "@";
  const kept = letters.replace(/Z+$/, "");
  const over = "A".repeat(letters.length - kept.length);
  if (kept === "") return `A${over}`;
  return `${kept.slice(0, -1)}${String.fromCharCode(kept.charCodeAt(kept.length - 1) + 1)}${over}`;
}
