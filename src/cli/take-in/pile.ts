/** A table of boards taken in as the pile of a project. */
import { basename, extname } from "node:path";
import { mapColumns, PILE_COLUMNS, type PileColumn } from "../../project/intake/pile/columns.ts";
import { readPile } from "../../project/intake/pile/read-pile.ts";
import { replacePile } from "../../project/intake/pile/replace-pile.ts";
import { readCsv } from "../../project/intake/table/read-csv.ts";
import { type Taken, tried } from "../../project/intake/taken.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";

export async function takePile(
  { options }: Job,
  file: FileText,
  into: OpenedProject | undefined,
): Promise<Taken | Refusal> {
  if (!into) return { refused: message("cli.refused.into-needed"), hint: message("cli.hint.into") };
  const said = columnsSaid(options.columns ?? "");
  if ("refused" in said) return said;
  const name = basename(file.name);
  const read =
    extname(name).toLowerCase() === ".xlsx"
      ? await (await import("../../project/intake/table/read-xlsx.ts")).readXlsx(file.bytes, name)
      : readCsv(file.text, name);
  if (!read.ok) return read;
  const lots = (into.project.pile?.lots ?? []).map(({ id }) => id);
  const pile = readPile(read.table, { mapping: mapColumns(read.table, said.columns), lots });
  if (!pile.ok) return pile;
  const replaced = replacePile(into, pile.pile, name);
  return tried({ document: into.document, name: basename(into.file.name) }, { ...replaced, findings: [] });
}

/** `length=Länge,board=Nr`: which title stands for which column. */
function columnsSaid(text: string): { readonly columns: Partial<Record<PileColumn, string>> } | Refusal {
  const columns: Partial<Record<PileColumn, string>> = {};
  for (const pair of text === "" ? [] : text.split(",")) {
    const [key = "", ...title] = pair.split("=");
    if (!Object.hasOwn(PILE_COLUMNS, key.trim()) || title.length === 0) {
      return {
        refused: message("cli.refused.columns", { pair }),
        hint: message("cli.hint.columns", { columns: Object.keys(PILE_COLUMNS) }),
      };
    }
    columns[key.trim() as PileColumn] = title.join("=").trim();
  }
  return { columns };
}
