/** `outerleaf restore`: a copy that `backup` wrote takes the place of the database; that one is kept beside it. */
import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { restoreFrom } from "../../store/database-file.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import type { Answer } from "../answer.ts";
import { systemReason } from "../files.ts";
import type { Job } from "../job.ts";
import { storeFolderOf } from "../store.ts";

export async function command(job: Job): Promise<Answer> {
  const { io, reader } = job;
  const copy = job.words[0] ?? "";
  const folder = storeFolderOf(job);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const done = await restoreFrom(resolve(io.cwd, copy), folder);
    if (!done.ok) return { refused: message("cli.refused.not-restored", { why: done.says }) };
    const { file, before } = done;
    const lines = [
      message("cli.restore.done", { file }),
      ...(before === undefined ? [] : [message("cli.restore.before", { before })]),
    ];
    return {
      exit: 0,
      json: { schemaVersion: 1, file, ...(before === undefined ? {} : { before }) },
      text: lines.map((line) => `${say(line, reader)}\n`).join(""),
    };
  } catch (error) {
    return { refused: message("cli.refused.not-restored", { why: systemReason(error) }) };
  }
}
