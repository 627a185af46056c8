/** `outerleaf new`: a small project to start from, its notes explaining each part. Never writes over a file. */
import { createHash } from "node:crypto";
import { writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { printProject } from "../../project/print.ts";
import { readDocument } from "../../project/read.ts";
import { starterProject } from "../../project/starter.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { systemReason } from "../files.ts";
import type { Job } from "../job.ts";
import { editDocument } from "../open-project.ts";

export async function command(job: Job): Promise<Answer> {
  const { io, options, reader } = job;
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
  const bytes = Buffer.from(printProject(edited.document), "utf8");
  try {
    await writeFile(resolve(io.cwd, file), bytes, { flag: "wx" });
  } catch (error) {
    return {
      refused: message("cli.refused.not-written", { file, why: systemReason(error) }),
      hint: message("cli.hint.other-name"),
    };
  }
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  return {
    exit: 0,
    json: { schemaVersion: 1, file, bytes: bytes.length, sha256 },
    text: `${say(message("cli.new.done", { file }), reader)}\n`,
  };
}
