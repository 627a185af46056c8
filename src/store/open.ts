/** Opens the database of a folder, and makes it at the first start. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { type Message, message } from "../text/message.ts";
import { DATABASE_FILE } from "./database-file.ts";
import { bringUp, DATABASE_VERSION } from "./migrations.ts";
import { createStore, type Store } from "./store.ts";

/** How long a write waits for one of another process, in milliseconds. */
const PATIENCE = 2000;

export type OpenedStore =
  | { readonly ok: true; readonly store: Store; readonly file: string }
  /** Why there is none; the workbench goes on without. */
  | { readonly ok: false; readonly says: Message };

/**
 * A write-ahead log with every commit synced: what was acknowledged is there after a crash of the program and after a
 * loss of power. Source: sqlite.org/wal.html and pragma `synchronous`.
 */
export async function openStore(folder: string): Promise<OpenedStore> {
  const file = join(folder, DATABASE_FILE);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    return refused("store.no-folder", { folder, reason: codeOf(error) });
  }
  const library = await import("better-sqlite3").catch(() => undefined);
  if (library === undefined) return refused("store.no-library", {});
  try {
    const database = new library.default(file, { timeout: PATIENCE });
    const close = (says: OpenedStore): OpenedStore => {
      database.close();
      return says;
    };
    try {
      const brought = bringUp(database);
      if (brought === "foreign") return close(refused("store.foreign", { file }));
      if (brought !== "ready") {
        const known = String(DATABASE_VERSION);
        return close(refused("store.newer", { file, version: String(brought.newer), known }));
      }
      database.pragma("journal_mode = WAL");
      database.pragma("synchronous = FULL");
      database.pragma("foreign_keys = ON");
      return { ok: true, store: createStore(database), file };
    } catch (error) {
      database.close();
      throw error;
    }
  } catch (error) {
    const code = codeOf(error);
    if (!code.startsWith("SQLITE_")) return refused("store.no-library", {});
    return /^SQLITE_(NOTADB|CORRUPT)/.test(code)
      ? refused("store.damaged", { file })
      : refused("store.unusable", { file, reason: code });
  }
}

function refused(key: string, values: Readonly<Record<string, string>>): OpenedStore {
  return { ok: false, says: message(key, values) };
}

function codeOf(error: unknown): string {
  return (error as { code?: string }).code ?? String(error);
}
