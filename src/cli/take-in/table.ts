/** A table to be taken in: read by what its name ends in, its columns as the options name them. */
import { basename, extname } from "node:path";
import { columnsOf, mapColumns, type Reads, type TableColumns } from "../../project/intake/table/columns.ts";
import { readCsv } from "../../project/intake/table/read-csv.ts";
import type { ReadTable, Table } from "../../project/intake/table/table.ts";
import { reducedTitle } from "../../project/intake/table/title.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";

export async function readTable({ name, bytes, text }: FileText): Promise<ReadTable> {
  if (extname(name).toLowerCase() !== ".xlsx") return readCsv(text, basename(name));
  const { readXlsx } = await import("../../project/intake/table/read-xlsx.ts");
  return readXlsx(bytes, basename(name));
}

/** By the table's own titles, by what `--columns` says of them, and in the unit of `--drawn`. */
export function readsOf<Column extends string>(
  { options }: Pick<Job, "options">,
  table: Table,
  columns: TableColumns<Column>,
): Reads<Column> | Refusal {
  const { drawn } = options;
  // A tape or a laser shows none.
  if (drawn === "dm")
    return { refused: message("cli.refused.table-unit"), hint: message("cli.hint.table-unit") };
  const said = columnsSaid(options.columns ?? "", table, columns);
  if ("refused" in said) return said;
  return { mapping: mapColumns(table, columns, said.columns), unit: drawn };
}

/** `length=Länge,board=Nr`: which title stands for which column. */
function columnsSaid<Column extends string>(
  text: string,
  { titles, name }: Table,
  columns: TableColumns<Column>,
): { readonly columns: Partial<Record<Column, string>> } | Refusal {
  const said: Partial<Record<Column, string>> = {};
  for (const pair of text === "" ? [] : text.split(",")) {
    const [key = "", ...rest] = pair.split("=");
    const column = columnsOf(columns).find((one) => one === key.trim());
    if (column === undefined || rest.length === 0) {
      return {
        refused: message("cli.refused.columns", { pair }),
        hint: message("cli.hint.columns", { columns: columnsOf(columns) }),
      };
    }
    const title = rest.join("=").trim();
    if (!titles.some((one) => reducedTitle(one) === reducedTitle(title))) {
      return {
        refused: message("cli.refused.column-title", { file: name, pair, title }),
        hint: message("cli.hint.column-titles", { titles: [...titles] }),
      };
    }
    said[column] = title;
  }
  return { columns: said };
}
