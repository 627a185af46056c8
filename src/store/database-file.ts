/** The database as a file: where it lies, whether one is ours and whole, a copy while it is in use, and a copy put back. */
import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Database } from "better-sqlite3";
import { type Message, message } from "../text/message.ts";
import { APPLICATION_ID, DATABASE_VERSION } from "./migrations.ts";

export const DATABASE_FILE = "outerleaf.sqlite";

/** How long a look at a file in use waits, in milliseconds. */
const PATIENCE = 1000;

/** Writes the whole database, as it is at this moment, into a new file; others may go on writing. */
export function copyInto(database: Database, file: string): void {
  const part = `${file}.part`;
  rmSync(part, { force: true });
  try {
    database.prepare("VACUUM INTO ?").run(part);
    toDisk(part);
    renameSync(part, file);
    toDisk(dirname(file));
  } finally {
    rmSync(part, { force: true });
  }
}

export type Restored =
  /** `before`: where the database that was there lies now; none where there was none. */
  | { readonly ok: true; readonly file: string; readonly before?: string }
  /** Nothing was changed. */
  | { readonly ok: false; readonly says: Message };

/** Puts a copy in the place of the folder's database. The one that was there is kept beside it under another name. */
export async function restoreFrom(copy: string, folder: string): Promise<Restored> {
  const library = await import("better-sqlite3").catch(() => undefined);
  if (library === undefined) return { ok: false, says: message("store.no-library") };
  const open = (path: string, readonly: boolean): Database =>
    new library.default(path, { readonly, fileMustExist: true, timeout: PATIENCE });
  const wrong = whatIsWrong(copy, open);
  if (wrong) return { ok: false, says: wrong };
  const file = join(folder, DATABASE_FILE);
  const there = existsSync(file);
  if (there && isInUse(file, open)) return { ok: false, says: message("store.in-use", { file }) };
  const part = `${file}.part`;
  copyFileSync(copy, part);
  toDisk(part);
  const before = there ? freeName(folder) : undefined;
  if (before !== undefined) {
    renameSync(file, before);
    for (const rest of ["-wal", "-shm"]) rmSync(`${file}${rest}`, { force: true });
  }
  renameSync(part, file);
  toDisk(folder);
  return { ok: true, file, ...(before === undefined ? {} : { before }) };
}

function whatIsWrong(file: string, open: (path: string, readonly: boolean) => Database): Message | undefined {
  if (!existsSync(file)) return message("store.no-copy", { file });
  try {
    const database = open(file, true);
    try {
      const numberOf = (pragma: string): number => database.pragma(pragma, { simple: true }) as number;
      if (numberOf("application_id") !== APPLICATION_ID) return message("store.foreign-copy", { file });
      const version = numberOf("user_version");
      if (version > DATABASE_VERSION) {
        return message("store.newer", { file, version: String(version), known: String(DATABASE_VERSION) });
      }
      const whole = database.pragma("integrity_check", { simple: true }) === "ok";
      return whole ? undefined : message("store.damaged-copy", { file });
    } finally {
      database.close();
    }
  } catch {
    return message("store.damaged-copy", { file });
  }
}

/**
 * Whether another connection has the file open. Leaving the write-ahead log needs the file alone, and fails where it is
 * not; it also brings the log into the file. Source: sqlite.org/pragma.html, `journal_mode`.
 */
function isInUse(file: string, open: (path: string, readonly: boolean) => Database): boolean {
  let database: Database | undefined;
  try {
    database = open(file, false);
    return database.pragma("journal_mode = DELETE", { simple: true }) !== "delete";
  } catch (error) {
    // What is no database at all is used by nobody of ours, and is kept beside the copy as it is.
    return !/^SQLITE_(NOTADB|CORRUPT)/.test((error as { code?: string }).code ?? "");
  } finally {
    database?.close();
  }
}

function freeName(folder: string): string {
  for (let n = 1; ; n++) {
    const name = join(folder, `outerleaf-before-restore-${n}.sqlite`);
    if (!existsSync(name)) return name;
  }
}

/** A name or content that is only in memory is lost with the power. */
function toDisk(path: string): void {
  // A folder cannot be opened on Windows, where renaming needs no such care.
  if (process.platform === "win32") return;
  const handle = openSync(path, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
