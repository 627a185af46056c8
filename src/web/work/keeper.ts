/**
 * Keeps the edits of the project on the sheet: at once in the browser, soon after by the server, one request at a time.
 * Which of two states is newer is told by what each was made from (docs/decisions/0011).
 */

import type { Versions } from "../../project/merge.ts";
import { type Message, message } from "../../text/message.ts";
import { hashOf } from "./hash.ts";
import { addAside, forget, type HeldUnsent, keep, keyFor, unsentOf } from "./keep.ts";
import { fetchKept, fetchProject, fetchRevision, putRevision, type RevisionInfo } from "./kept-api.ts";

/** A state of the project and the edit that led to it. */
export interface Edited {
  readonly document: unknown;
  readonly says: Message;
}

export type KeptState =
  | { readonly kind: "nothing" }
  /** The file was changed elsewhere since: what is kept is in the list. */
  | { readonly kind: "changed" }
  | { readonly kind: "sending" }
  | { readonly kind: "server"; readonly revision: RevisionInfo }
  /** In this browser alone, or not even there. */
  | { readonly kind: "browser" | "nowhere" }
  /** Another window went on; `other` is its latest revision, none where the project was removed. */
  | { readonly kind: "conflict"; readonly mine: Message; readonly other: RevisionInfo | undefined };

export interface Sheet {
  readonly id: string;
  readonly name: string;
  /** As it was read. */
  readonly document: unknown;
  /** Where it was read from the server's own revision. */
  readonly latest?: RevisionInfo;
  onState(state: KeptState): void;
}

export type Way = "mine" | "other" | "both";

export interface Keeper {
  /** A newer state than the file, to be put on the sheet. */
  readonly newer: Edited | undefined;
  /** Tells what stands on the sheet now. */
  edited(now: Edited): void;
  /**
   * After a conflict: puts mine on top of the other, or goes on with the other, `both` with mine as a variant; gives what
   * is to be put on the sheet.
   */
  settle(way: Way): Promise<Edited | undefined>;
  /** Of a conflict: mine, the other, and what both were made from; undefined where one of them cannot be had. */
  versions(): Promise<Versions | undefined>;
  /** Ends a conflict with what mine and the other became together; `refused` where the server takes no such document. */
  merge(merged: Edited): Promise<"kept" | "failed" | "refused" | "conflict">;
  /** Another project takes the sheet. */
  leave(): void;
}

/** How long after an edit it is sent, and how long after a failure it is tried again, in milliseconds. */
const SOON = 600;
const LATER = 5000;

/** Between two states of a drag that the browser writes down, in milliseconds: each takes a frame's share. */
const APART = 250;

/** Another window's state beside the one on the sheet; `key` is where the browser holds the one that was set aside. */
interface Conflict {
  readonly mine: Edited;
  readonly other: RevisionInfo | undefined;
  readonly key: string;
  readonly shown: "mine" | "other";
  /** The revision that mine was made from; none where it was made from the file. */
  readonly from: string | undefined;
}

export async function openKeeper({ id, name, document: file, latest, onState }: Sheet): Promise<Keeper> {
  const base = await hashOf(file);
  const reached = await fetchKept();
  const hasNoStore = reached?.store === false;
  const isKept = reached?.projects.some((project) => project.id === id) ?? false;
  const project = isKept && !latest ? await fetchProject(id, base) : undefined;
  const revision = latest ?? project?.revision;
  /** The edit of a document by its own name, where the sheet calls it by another. */
  const names = new Map<unknown, Message>();
  const key = keyFor(id);

  /** The revision that the sheet's state is made from. */
  let onto = revision;
  /** What needs no keeping: what the server has, or the file itself. */
  let kept: unknown = file;
  /** The server has not seen the file as it was read. */
  let fileUnseen = revision === undefined || (!latest && !project?.knowsFile);
  let now: Edited | undefined;
  let conflict: Conflict | undefined;
  let newer: Edited | undefined;
  /** Of this project in the browser, from windows that are no more. */
  let left: string[] = [];
  let isHeld = true;
  let running = false;
  let isLeft = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const report = (state: KeptState): void => {
    if (!isLeft) onState(state);
  };
  const reportRest = (): void => {
    if (conflict) report({ kind: "conflict", mine: conflict.mine.says, other: conflict.other });
    else if (onto && !fileUnseen) report({ kind: "server", revision: onto });
    else report({ kind: onto ? "changed" : "nothing" });
  };

  const findNewer = async (): Promise<void> => {
    if (project && !fileUnseen && project.revision.hash !== base) {
      newer = project.revision;
      kept = newer.document;
    }
    for (const unsent of await unsentOf(id)) {
      if ((await hashOf(unsent.document)) === (revision?.hash ?? base)) await forget(unsent.key);
      else if (!conflict && (newer === undefined || newer === project?.revision) && followsOn(unsent)) {
        newer = unsent;
        left = [unsent.key];
      } else {
        conflict ??= { mine: unsent, other: revision, key: unsent.key, shown: "other", from: unsent.onto };
      }
    }
    if (newer) names.set(newer.document, newer.says);
  };
  /** Whether an edit in the browser was made from the latest that there is elsewhere. */
  const followsOn = (unsent: HeldUnsent): boolean =>
    revision ? unsent.onto === revision.tag : unsent.base === base;

  /** By its tag, which begins with its number. */
  const revisionOf = async (tag: string) => {
    const found = await fetchRevision(id, Number.parseInt(tag, 10));
    return found?.tag === tag ? found : undefined;
  };

  const sendIn = (delay: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void send(), delay);
  };

  const put = async ({ document, says }: Edited): Promise<"kept" | "failed" | "refused" | "conflict"> => {
    const answer = await putRevision(id, { name, document, says: names.get(document) ?? says }, onto?.tag);
    if (answer.kind === "kept") onto = answer.revision;
    if (answer.kind === "conflict" && (conflict || now)) {
      const other = answer.latest;
      if (conflict) conflict = { ...conflict, other };
      else if (now) conflict = { mine: now, other, key, shown: "mine", from: onto?.tag };
      reportRest();
    }
    return answer.kind;
  };

  const send = async (): Promise<void> => {
    if (running || conflict || !now || now.document === kept || hasNoStore) return;
    running = true;
    report({ kind: "sending" });
    const going = now;
    const asRead = { document: file, says: message("page.edit.read", { file: name }) };
    let done = fileUnseen ? await put(asRead) : "kept";
    if (done === "kept") {
      fileUnseen = false;
      done = await put(going);
    }
    running = false;
    if (done === "kept") {
      kept = going.document;
      if (now !== going) await hold(now);
      else await letGo();
      if (now.document === kept) reportRest();
      sendIn(SOON);
    } else if (done !== "conflict") {
      report({ kind: isHeld ? "browser" : "nowhere" });
      if (done === "failed") sendIn(LATER);
    }
  };

  const hold = async ({ document, says }: Edited): Promise<void> => {
    const unsent = { base, document, says: names.get(document) ?? says, ...(onto && { onto: onto.tag }) };
    isHeld = await keep(key, unsent);
    if (isHeld) await forgetLeft();
    if (hasNoStore) report({ kind: isHeld ? "browser" : "nowhere" });
  };
  /** The state that the browser is to write down next, and whether it rests from the one before. */
  let unheld: Edited | undefined;
  let rests: ReturnType<typeof setTimeout> | undefined;
  const holdNext = (): void => {
    const next = unheld;
    unheld = undefined;
    rests = next && setTimeout(holdNext, APART);
    if (next) void hold(next);
  };
  const letGo = async (): Promise<void> => {
    unheld = undefined;
    await forget(key);
    await forgetLeft();
  };
  const forgetLeft = async (): Promise<void> => {
    const gone = left;
    left = [];
    for (const one of gone) await forget(one);
  };

  await findNewer();
  reportRest();
  window.addEventListener("pagehide", holdNext);

  return {
    newer,
    edited(next) {
      // The file as it was read, before anything was done to it, or while what is newer is on its way.
      if (!now && next.document === file) return;
      now = next;
      if (conflict?.shown === "mine") conflict = { ...conflict, mine: next };
      if (next.document === kept && !running) {
        clearTimeout(timer);
        void letGo();
        reportRest();
        return;
      }
      unheld = next;
      if (rests === undefined) holdNext();
      if (conflict || hasNoStore) return;
      report({ kind: "sending" });
      sendIn(SOON);
    },

    async settle(way) {
      const settled = conflict;
      if (!settled) return undefined;
      const { mine, other, shown } = settled;
      if (way === "mine" || !other) {
        conflict = undefined;
        if (shown === "other") {
          await send();
          left = [...left, settled.key];
          names.set(mine.document, mine.says);
          return mine;
        }
        onto = other;
        // A project that was removed is begun again with the file.
        fileUnseen = other === undefined;
        await send();
        return undefined;
      }
      const theirs = await fetchRevision(id, other.number);
      if (!theirs) return undefined;
      if (way === "both") await addAside(name, mine);
      // Mine goes into the list first, so that either can be gone back to.
      conflict = undefined;
      onto = other;
      if ((await put(mine)) !== "kept") {
        conflict ??= settled;
        reportRest();
        return undefined;
      }
      kept = mine.document;
      left = [...left, settled.key];
      const back = {
        document: theirs.document,
        says: message("page.edit.back-to", { number: String(other.number), says: other.says }),
      };
      if (shown === "mine") return back;
      if (!now) {
        now = { document: newer?.document ?? file, says: back.says };
        names.set(now.document, back.says);
      }
      await send();
      return undefined;
    },

    async versions() {
      if (!conflict?.other) return undefined;
      const { mine, other, from, shown } = conflict;
      const base = from === undefined ? { document: file } : await revisionOf(from);
      // Where the other stands on the sheet, it may have been edited there since.
      const theirs = shown === "other" && now ? now : await fetchRevision(id, other.number);
      return theirs && base && { base: base.document, mine: mine.document, other: theirs.document };
    },

    async merge(merged) {
      const begun = conflict;
      if (!begun?.other) return "failed";
      const before = onto;
      onto = begun.other;
      const done = await put(merged);
      if (done !== "kept") {
        onto = before;
        return done;
      }
      conflict = undefined;
      fileUnseen = false;
      now = merged;
      kept = merged.document;
      left = [...left, begun.key];
      await letGo();
      reportRest();
      return done;
    },

    leave() {
      isLeft = true;
      clearTimeout(timer);
      window.removeEventListener("pagehide", holdNext);
      holdNext();
      void send();
    },
  };
}
