/** Comma-separated values as RFC 4180 has them; semicolons and tabs are taken where the first line is parted by them. */
import { type ReadTable, tableOf, unreadable } from "./table.ts";

const SEPARATORS = [",", ";", "\t"] as const;

export function readCsv(text: string, name: string): ReadTable {
  const plain = text.replace(/^\uFEFF/, "");
  if (plain.includes("\0")) return unreadable("intake.table.binary", name);
  const records = parsed(plain, separatorOf(plain));
  return records ? tableOf(name, records) : unreadable("intake.table.quote", name);
}

/** The one that stands most often in the first line, quoted text left out. */
function separatorOf(text: string): string {
  const line = (/^[^\r\n]*/.exec(text)?.[0] ?? "").replace(/"[^"]*"/g, "");
  const counts = SEPARATORS.map((sign) => line.split(sign).length);
  return SEPARATORS[counts.indexOf(Math.max(...counts))] ?? ",";
}

/** Undefined where a quote is not closed. */
function parsed(text: string, separator: string): string[][] | undefined {
  const records: string[][] = [[]];
  let field = "";
  let isQuoted = false;
  const endField = (): void => {
    // Our own files put an apostrophe before what a spreadsheet would take for a formula.
    records.at(-1)?.push(field.replace(/^'(?=[=+\-@\t\r])/, ""));
    field = "";
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] as string;
    if (isQuoted) {
      if (sign !== '"') field += sign;
      else if (text[at + 1] === '"') {
        field += '"';
        at++;
      } else isQuoted = false;
    } else if (sign === '"' && field === "") isQuoted = true;
    else if (sign === separator) endField();
    else if (sign === "\n" || sign === "\r") {
      if (sign === "\r" && text[at + 1] === "\n") at++;
      endField();
      records.push([]);
    } else field += sign;
  }
  if (isQuoted) return undefined;
  endField();
  return records;
}
