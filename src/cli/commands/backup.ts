/** `outerleaf backup`: the whole database as one new file, while the workbench goes on. Never writes over a file. */
import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import type { Answer } from "../answer.ts";
import { systemReason } from "../files.ts";
import type { Job } from "../job.ts";
import { withStore } from "../store.ts";

export function command(job: Job): Promise<Answer> {
  const { io, reader } = job;
  const file = job.words[0] ?? "";
  const path = resolve(io.cwd, file);
  return withStore<Answer>(job, async (store) => {
    const refused = (why: ReturnType<typeof message>): Answer => ({
      refused: message("cli.refused.not-written", { file, why }),
      hint: message("cli.hint.other-name"),
    });
    if (existsSync(path)) return refused(message("cli.file.exists"));
    try {
      store.backUp(path);
    } catch (error) {
      return refused(systemReason(error));
    }
    const bytes = statSync(path).size;
    return {
      exit: 0,
      json: { schemaVersion: 1, file, bytes },
      text: `${say(message("cli.backup.done", { file, bytes: String(bytes) }), reader)}\n`,
    };
  });
}
