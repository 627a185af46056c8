/**
 * Comma-separated values as RFC 4180 has them: CRLF after every record, fields in quotes where they hold a comma, a quote
 * or a line break, quotes doubled. UTF-8 without a byte order mark, as the RFC's grammar leaves no place for one; numbers
 * with a point in every language. A text that a spreadsheet would run as a formula gets an apostrophe in front.
 */
import { mapped } from "../pieces.ts";

/** A number is never guarded and never quoted; undefined is an empty field. */
export type Cell = string | number | undefined;

/** Any lead that a spreadsheet reads as the start of a formula, or strips to find one. */
const FORMULA = /^[=+\-@\t\r]/;
const QUOTED = /[",\r\n]/;

export function csvText(records: Iterable<readonly Cell[]>): string {
  return [...csvPieces(records)].join("");
}

/** The same, a piece a record. */
export function csvPieces(records: Iterable<readonly Cell[]>): Iterable<string> {
  return mapped(records, (record) => `${record.map(field).join(",")}\r\n`);
}

function field(cell: Cell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return plainNumber(cell);
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return QUOTED.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Six decimals at most, no exponent, no trailing zeros, no -0. */
function plainNumber(value: number): string {
  const text = value.toFixed(6).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
