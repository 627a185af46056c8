/** A project written to a file of its own. */
import { createHash } from "node:crypto";
import { writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { printProject } from "../project/print.ts";
import { message } from "../text/message.ts";
import type { Refusal } from "./answer.ts";
import { systemReason } from "./files.ts";
import type { Job } from "./job.ts";

export interface Written {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** Never over a file that is there. */
export async function writeProject({ io }: Job, file: string, document: unknown): Promise<Written | Refusal> {
  const bytes = Buffer.from(printProject(document), "utf8");
  try {
    await writeFile(resolve(io.cwd, file), bytes, { flag: "wx" });
  } catch (error) {
    return {
      refused: message("cli.refused.not-written", { file, why: systemReason(error) }),
      hint: message("cli.hint.other-name"),
    };
  }
  return { file, bytes: bytes.length, sha256: createHash("sha256").update(bytes).digest("hex") };
}
