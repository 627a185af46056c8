/** What `--since` names: what has been cut, what broke, what is rotten. */
import * as z from "zod";
import type { SinceThen } from "../cutting/facade/recut.ts";
import { parseJson } from "../project/json.ts";
import { message } from "../text/message.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { readText } from "./files.ts";

const sinceShape = z
  .strictObject({
    cut: z.array(z.string()).optional().describe("Marks of pieces that are cut and good."),
    brokenSheets: z
      .array(z.number().int())
      .optional()
      .describe("Sheets that broke, by their numbers in the cut list: from 1 through the whole building."),
    spoiltBoards: z.array(z.string()).optional().describe("Boards of the pile that cannot be used."),
  })
  .meta({ description: "What has happened since the cut plan was made." });

export async function readSince(name: string, cwd: string): Promise<SinceThen | Refusal> {
  const file = await readText(name, cwd);
  if (isRefusal(file)) return file;
  const parsed = parseJson(file.text.replace(/^\uFEFF/, ""));
  const hint = message("cli.hint.since");
  if (!parsed.ok) {
    const [fault] = parsed.faults;
    const at = { file: file.name, line: fault?.line ?? 1, column: fault?.column ?? 1 };
    return { refused: message("cli.refused.list-not-json", at), hint };
  }
  const read = sinceShape.safeParse(parsed.value);
  if (!read.success) {
    const [issue] = read.error.issues;
    const path = issue?.code === "unrecognized_keys" ? issue.keys : (issue?.path ?? []);
    return {
      refused: message("cli.refused.since", { file: file.name, path: `/${path.join("/")}` }),
      hint,
    };
  }
  const { cut = [], brokenSheets = [], spoiltBoards = [] } = read.data;
  return { cut, brokenSheets, spoiltBoards };
}
