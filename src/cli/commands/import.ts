/** `outerleaf import`: takes in an archive that `export` wrote; what is kept already is recognised. */
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { entryShape } from "../../site/journal/entry.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import type { Answer } from "../answer.ts";
import { systemReason } from "../files.ts";
import type { Job } from "../job.ts";
import { withStore } from "../store.ts";

export async function command(job: Job): Promise<Answer> {
  const { io, reader } = job;
  const file = job.words[0] ?? "";
  let bytes: Uint8Array;
  try {
    bytes = await readFile(resolve(io.cwd, file));
  } catch (error) {
    return {
      refused: message("cli.refused.file-unreadable", { file, why: systemReason(error) }),
      hint: message("cli.hint.file-path"),
    };
  }
  return withStore<Answer>(job, async (store) => {
    const done = await store.archives.unpack(bytes, (entry) => entryShape.safeParse(entry).success);
    if (!done.ok) return { refused: message("cli.refused.not-taken-in", { file, why: done.says }) };
    const { taken } = done;
    const { title, ...counts } = taken;
    const values = Object.fromEntries(Object.entries(counts).map(([name, count]) => [name, String(count)]));
    return {
      exit: 0,
      json: { schemaVersion: 1, ...taken },
      text: `${say(message("cli.import.done", { title, ...values }), reader)}\n`,
    };
  });
}
