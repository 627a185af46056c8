/** A table of readings taken in as the survey of a project. */
import { basename } from "node:path";
import { READING_COLUMNS } from "../../project/intake/readings/columns.ts";
import { readReadings } from "../../project/intake/readings/read-readings.ts";
import { takeReadings } from "../../project/intake/readings/take-readings.ts";
import { type Taken, tried } from "../../project/intake/taken.ts";
import type { Refusal } from "../answer.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";
import { readsOf, readTable } from "./table.ts";

export async function takeSurvey(job: Job, file: FileText, into: OpenedProject): Promise<Taken | Refusal> {
  const read = await readTable(file);
  if (!read.ok) return read;
  const { table } = read;
  const reads = readsOf(job, table, READING_COLUMNS);
  if ("refused" in reads) return reads;
  const found = readReadings(table, { ...reads, faces: into.project.faces });
  if (!found.ok) return found;
  const { change, tells } = takeReadings(into, found.readings, table.name);
  const { findings } = found;
  return tried({ document: into.document, name: basename(into.file.name) }, { change, tells, findings });
}
