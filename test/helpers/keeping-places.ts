/** The two places where work is kept, the database of the workbench and the browser's own, behind one face for the suite that holds both. */
import { createHash } from "node:crypto";
import { IDBFactory } from "fake-indexeddb";
import { vi } from "vitest";
import type { Entry } from "../../src/site/journal/entry.ts";
import { entryShape } from "../../src/site/journal/entry.ts";
import type { Store } from "../../src/store/store.ts";
import type { Telling } from "../../src/web/site/queue/model.ts";
import { DEVICES } from "./journal.ts";
import { ID, nth, storeFolder } from "./store.ts";

export interface KeepingPlace {
  /** A project's document as one writer has it, made from what that writer saw last. `other`: another went on, and is not written over. */
  write(writer: string, document: unknown): Promise<"kept" | "other">;
  /** Every document that can be had, whoever wrote it. */
  documents(): Promise<readonly unknown[]>;
  /** Something told on site; false where it is no entry. */
  tell(telling: Telling): Promise<boolean>;
  /** Every entry, in the order told. */
  entries(): Promise<readonly Entry[]>;
  /** An answer was lost: what was kept is kept again. */
  again(entry: Entry): Promise<void>;
  /** False where it was not taken. */
  putPicture(picture: Uint8Array): Promise<boolean>;
  picture(sha256: string): Promise<Uint8Array | undefined>;
}

export interface OpenedPlace {
  /** Opened by another program than the last one: nothing is remembered but what is kept. */
  open(): Promise<KeepingPlace>;
  clear(): void;
}

export const shaOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

export function embeddedPlace(): OpenedPlace {
  const folder = storeFolder();
  const time = "2026-05-04T06:00:00.000Z";
  let told = 0;
  const place = (store: Store): KeepingPlace => {
    const seen = new Map<string, string | undefined>();
    return {
      write: async (writer, document) => {
        if (!seen.has(writer)) seen.set(writer, (await store.project(ID))?.latest.tag);
        const answer = await store.put(ID, nth(1, seen.get(writer), { document, who: writer }));
        if (answer.kind === "conflict") return "other";
        seen.set(writer, answer.revision.tag);
        return "kept";
      },
      documents: async () => {
        const all = (await store.revisions(ID)).toReversed();
        return Promise.all(all.map(async ({ number }) => (await store.revision(ID, number))?.document));
      },
      tell: async (telling) => {
        const read = entryShape.safeParse({ ...telling, id: `${DEVICES[0]}-${told + 1}`, told: time });
        if (!read.success) return false;
        told += 1;
        await store.journal.append(ID, [read.data], { who: "", time });
        return true;
      },
      entries: async () =>
        (await store.journal.after(ID, { after: 0, limit: 1000 })).entries.map(({ entry }) => entry as Entry),
      again: async (entry) => {
        await store.journal.append(ID, [entry], { who: "", time });
      },
      putPicture: async (content) =>
        (await store.attachments.put(shaOf(content), { content, time })).kind === "kept",
      picture: async (sha256) => (await store.attachments.get(sha256))?.content,
    };
  };
  return { open: async () => place(await folder.open()), clear: folder.clear };
}

/** In memory, by a library that implements the browser's standard (W3C Indexed Database API). */
export function browserPlace(): OpenedPlace {
  vi.stubGlobal("indexedDB", new IDBFactory());
  const open = async (): Promise<KeepingPlace> => {
    vi.resetModules();
    const [edits, queue, { answerOf, transact }] = await Promise.all([
      import("../../src/web/work/keep.ts"),
      import("../../src/web/site/queue/kept-queue.ts"),
      import("../../src/web/site/queue/database.ts"),
    ]);
    const keys = new Map<string, string>();
    const says = nth(1).says;
    let arrived = 0;
    return {
      write: async (writer, document) => {
        const key = keys.get(writer) ?? edits.keyFor(ID);
        keys.set(writer, key);
        return (await edits.keep(key, { base: "", document, says })) ? "kept" : "other";
      },
      documents: async () => (await edits.unsentOf(ID)).map(({ document }) => document),
      tell: (telling) => queue.tell(ID, telling),
      entries: async () => {
        const known = await transact(["journal"], "readonly", (within) =>
          answerOf(within.objectStore("journal").getAll()),
        );
        const all = [...known, ...(await queue.keptQueue.waiting())] as readonly { entry: Entry }[];
        return all.map(({ entry }) => entry);
      },
      // The server has it, and says so twice: it goes from the queue into the journal once.
      again: async (entry) => {
        const waiting = (await queue.keptQueue.waiting()).find((one) => one.entry.id === entry.id);
        if (!waiting) return;
        arrived += 1;
        for (let time = 0; time < 2; time++) await queue.keptQueue.arrived(waiting, arrived);
      },
      putPicture: async (content) => {
        await queue.keepPhoto(shaOf(content), new Blob([new Uint8Array(content)]));
        return true;
      },
      picture: async (sha256) => {
        const blob = await queue.keptQueue.photoToSend(sha256);
        return blob && new Uint8Array(await blob.arrayBuffer());
      },
    };
  };
  return { open, clear: () => vi.unstubAllGlobals() };
}
