/** `outerleaf new`: a small project to start from, its notes explaining each part. Never writes over a file. */
import { readDocument } from "../../project/read.ts";
import { starterProject } from "../../project/starter.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { editDocument } from "../open-project.ts";
import { writeProject } from "../write-project.ts";

export async function command(job: Job): Promise<Answer> {
  const { options, reader } = job;
  const file = job.words[0] ?? "";
  const starter = starterProject();
  const display = {
    ...starter.display,
    language: reader.language,
    ...(options.units && { units: options.units }),
  };
  const own: unknown = { ...starter, display };
  const edited = options.edit === undefined ? { document: own } : await editDocument(job, own);
  if (isRefusal(edited)) return edited;
  const read = readDocument(edited.document, file);
  if (!read.ok) {
    return {
      refused: message("cli.refused.edited-starter", { file: options.edit ?? "" }),
      findings: read.findings,
    };
  }
  const written = await writeProject(job, file, edited.document);
  if (isRefusal(written)) return written;
  return {
    exit: 0,
    json: { schemaVersion: 1, ...written },
    text: `${say(message("cli.new.done", { file }), reader)}\n`,
  };
}
