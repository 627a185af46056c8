/** A table of boards taken in as the pile of a project. */
import { basename } from "node:path";
import { PILE_COLUMNS } from "../../project/intake/pile/columns.ts";
import { readPile } from "../../project/intake/pile/read-pile.ts";
import { replacePile } from "../../project/intake/pile/replace-pile.ts";
import { type Taken, tried } from "../../project/intake/taken.ts";
import type { Refusal } from "../answer.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";
import { readsOf, readTable } from "./table.ts";

export async function takePile(job: Job, file: FileText, into: OpenedProject): Promise<Taken | Refusal> {
  const read = await readTable(file);
  if (!read.ok) return read;
  const { table } = read;
  const reads = readsOf(job, table, PILE_COLUMNS);
  if ("refused" in reads) return reads;
  const lots = (into.project.pile?.lots ?? []).map(({ id }) => id);
  const pile = readPile(table, { ...reads, lots });
  if (!pile.ok) return pile;
  const replaced = replacePile(into, pile.pile, table.name);
  return tried({ document: into.document, name: basename(into.file.name) }, { ...replaced, findings: [] });
}
