/** A table as it comes in: a row of titles, and rows of texts and numbers, numbered as a spreadsheet numbers them. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { message } from "../../../text/message.ts";
import "../texts.ts";

export type TableCell = string | number | undefined;

export interface Table {
  /** Of the file, as the messages say it. */
  readonly name: string;
  readonly titles: readonly string[];
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  /** 1 is the first row of the file. */
  readonly number: number;
  readonly cells: readonly TableCell[];
}

export type ReadTable =
  | { readonly ok: true; readonly table: Table }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** The first row that says something holds the titles; empty rows are passed over. */
export function tableOf(name: string, records: readonly (readonly TableCell[])[]): ReadTable {
  const rows = records
    .map((cells, i): TableRow => ({ number: i + 1, cells: cells.map(trimmed) }))
    .filter(({ cells }) => cells.some((cell) => cell !== undefined));
  const [head, ...rest] = rows;
  if (!head) return unreadable("intake.table.empty", name);
  return { ok: true, table: { name, titles: head.cells.map((cell) => String(cell ?? "")), rows: rest } };
}

export function unreadable(key: string, file: string): Extract<ReadTable, { ok: false }> {
  const hint = message("intake.hint.table");
  return {
    ok: false,
    findings: [finding({ code: "F034", outcome: "fail", where: {}, says: message(key, { file }), hint })],
  };
}

function trimmed(cell: TableCell): TableCell {
  if (typeof cell !== "string") return cell;
  const text = cell.trim();
  return text === "" ? undefined : text;
}
