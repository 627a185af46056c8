/** Keeps the documents of a revision in the database, byte for byte as they went out. */
import { readFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { MANIFEST, type Manifest } from "../../output/issue/manifest.ts";
import { hashOf } from "../../store/revision.ts";
import { type Message, message } from "../../text/message.ts";
import { isRefusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { keptId, withStore } from "../store.ts";
import type { Worked } from "./work.ts";

interface Frozen {
  /** Of the set; none where no revision was asked for or no database could be opened. */
  readonly number?: number;
  readonly says?: Message;
}

/** The folder stands either way: a database that cannot be opened is told, and takes nothing back. */
export async function freeze(
  job: Job,
  { worked, folder, manifest }: { worked: Worked; folder: string; manifest: Manifest },
): Promise<Frozen> {
  const { revision, note = "", who = "" } = job.options;
  if (revision === undefined) return {};
  const names = [...manifest.documents.map(({ name }) => name), MANIFEST];
  const files = await Promise.all(
    names.map(async (name) => ({ name, content: await readFile(join(resolve(job.io.cwd, folder), name)) })),
  );
  const hash = hashOf(JSON.stringify(worked.opened.document));
  const time = new Date().toISOString();
  const number = await withStore(job, (store) =>
    store.issued.freeze(keptId(job.words[0] ?? "", job), { revision, note, who, time, hash, files }),
  );
  if (typeof number === "number") {
    return { number, says: message("cli.issue.frozen", { number: String(number), revision }) };
  }
  return isRefusal(number) ? { says: message("cli.issue.not-frozen", { why: number.refused }) } : {};
}
