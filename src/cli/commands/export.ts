/** `outerleaf export`: one kept project with journal, pictures and issued sets as one archive. Never writes over a file. */
import { writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import type { Answer } from "../answer.ts";
import { systemReason } from "../files.ts";
import type { Job } from "../job.ts";
import { keptId, withStore } from "../store.ts";

export function command(job: Job): Promise<Answer> {
  const { io, options, reader } = job;
  const word = job.words[0] ?? "";
  const file = options.to ?? "";
  return withStore<Answer>(job, async (store) => {
    const id = keptId(word, job);
    const archive = await store.archives.pack(id);
    if (!archive) {
      const kept = (await store.list()).map(({ id: own, title }) => `${own} (${title})`);
      return {
        refused: message("cli.refused.not-kept", { project: word }),
        ...(kept.length > 0 ? { hint: message("cli.hint.kept", { kept }) } : {}),
      };
    }
    try {
      await writeFile(resolve(io.cwd, file), archive, { flag: "wx" });
    } catch (error) {
      return {
        refused: message("cli.refused.not-written", { file, why: systemReason(error) }),
        hint: message("cli.hint.other-name"),
      };
    }
    return {
      exit: 0,
      json: { schemaVersion: 1, id, file, bytes: archive.byteLength },
      text: `${say(message("cli.export.done", { file, bytes: String(archive.byteLength) }), reader)}\n`,
    };
  });
}
