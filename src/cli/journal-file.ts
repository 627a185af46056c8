/** A journal as it was saved: a list of entries, or the answer that the server gives to who reads its journal. */
import * as z from "zod";
import { parseJson } from "../project/json.ts";
import { type Entry, entryShape } from "../site/journal/entry.ts";
import { message } from "../text/message.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { readText } from "./files.ts";

const kept = z.union([entryShape, z.looseObject({ entry: entryShape }).transform(({ entry }) => entry)]);
const journal = z.union([
  z.array(kept),
  z.looseObject({ entries: z.array(kept) }).transform(({ entries }) => entries),
]);

export async function readJournal(name: string, cwd: string): Promise<readonly Entry[] | Refusal> {
  const file = await readText(name, cwd);
  if (isRefusal(file)) return file;
  const parsed = parseJson(file.text);
  const read = parsed.ok ? journal.safeParse(parsed.value) : undefined;
  return read?.success
    ? read.data
    : { refused: message("cli.refused.journal", { file: name }), hint: message("cli.hint.journal") };
}
