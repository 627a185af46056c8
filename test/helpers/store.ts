/** A database in a folder of its own. */
import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe } from "vitest";
import { openStore } from "../../src/store/open.ts";
import type { NewRevision } from "../../src/store/revision.ts";
import type { Store } from "../../src/store/store.ts";
import { message } from "../../src/text/message.ts";

/** A group of tests that need the database's library; skipped, with the reason in its name, where it could not be built. */
export function describeWithStore(name: string, tests: () => void): void {
  try {
    createRequire(import.meta.url).resolve("better-sqlite3");
    describe(name, tests);
  } catch {
    describe.skip(`${name} (skipped: the database's library is not built here)`, tests);
  }
}

export interface StoreFolder {
  readonly folder: string;
  open(): Promise<Store>;
  clear(): void;
}

export function storeFolder(): StoreFolder {
  const folder = mkdtempSync(join(tmpdir(), "outerleaf-store-"));
  const opened: Store[] = [];
  return {
    folder,
    open: async () => {
      const answer = await openStore(folder);
      if (!answer.ok) throw new Error(answer.says.key);
      opened.push(answer.store);
      return answer.store;
    },
    clear: () => {
      for (const store of opened) store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export const ID = "0123456789abcdef01234567";

/** The nth revision of a small project that no reader would accept: the store asks no questions. */
export function nth(n: number, onto?: string, more: Partial<NewRevision> = {}): NewRevision {
  return {
    name: "house.outerleaf.json",
    title: "House",
    document: { n },
    says: message("page.edit.opening", { id: `W${n}` }),
    time: "2026-03-01T10:00:00.000Z",
    onto,
    ...more,
  };
}
