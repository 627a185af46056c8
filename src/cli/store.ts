/** The database, for commands that work on it by themselves. */
import { createHash } from "node:crypto";
import { resolve } from "node:path";
import { openStore } from "../store/open.ts";
import type { Store } from "../store/store.ts";
import { message } from "../text/message.ts";
import type { Refusal } from "./answer.ts";
import type { Job } from "./job.ts";

/** The folder that was named, or the user's own. */
export function storeFolderOf({ io, options }: Pick<Job, "io" | "options">): string {
  return options.data === undefined ? io.dataFolder : resolve(io.cwd, options.data);
}

/** Opens the database for one piece of work and closes it again, whatever becomes of the work. */
export async function withStore<Answer>(
  job: Job,
  work: (store: Store) => Promise<Answer>,
): Promise<Answer | Refusal> {
  const opened = await openStore(storeFolderOf(job));
  if (!opened.ok) return { refused: message("cli.refused.no-store", { why: opened.says }) };
  try {
    return await work(opened.store);
  } finally {
    opened.store.close();
  }
}

/** The id under which a project is kept: as it stands, or made of where its file lies, as the server does. */
export function keptId(word: string, { io }: Pick<Job, "io">): string {
  if (/^[0-9a-f]{24}$/.test(word)) return word;
  return createHash("sha256").update(resolve(io.cwd, word)).digest("hex").slice(0, 24);
}
