/** Readings of walls from a table, one a row: every fault told by row, column, value and mend, and none taken where one fails. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { LANGUAGES, template } from "../../../text/catalogue.ts";
import { type Message, message } from "../../../text/message.ts";
import { parseLength } from "../../../units/feet-inch.ts";
import type { Table, TableRow } from "../table/table.ts";
import { reducedTitle, unitOf, withoutUnit } from "../table/title.ts";
import "../texts.ts";

const COLUMNS = ["face", "x", "y", "outward"] as const;
type Column = (typeof COLUMNS)[number];

/** In the face frame (mm); `outward` positive where the wall stands out from the plumb plane. */
export interface TakenReading {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  readonly outward: number;
}

export type ReadReadings =
  | { readonly ok: true; readonly readings: readonly TakenReading[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** @param faces of the project */
export function readReadings(table: Table, faces: readonly string[]): ReadReadings {
  const plain = table.titles.map((title) => reducedTitle(withoutUnit(title)));
  const places = new Map(
    COLUMNS.map((column) => [column, plain.findIndex((one) => namesOf(column).includes(one))]),
  );
  const missing = COLUMNS.filter((column) => (places.get(column) ?? -1) < 0);
  if (missing.length > 0) {
    const says = message("intake.readings.columns", {
      file: table.name,
      columns: missing.map((column) => message(`intake.readings.${column}`)),
      titles: [...table.titles],
    });
    return refused([fault(says, message("intake.hint.readings.columns"))]);
  }
  const findings: Finding[] = [];
  const cellOf = (row: TableRow, column: Column): string => String(row.cells[places.get(column) ?? -1] ?? "");
  const tell = (row: TableRow, column: Column, key: string, hint: Message): undefined => {
    const says = message(key, {
      file: table.name,
      row: String(row.number),
      column: table.titles[places.get(column) ?? -1] ?? "",
      value: cellOf(row, column),
    });
    findings.push(fault(says, hint));
  };
  const lengthOf = (row: TableRow, column: Column): number | undefined => {
    const read = parseLength(cellOf(row, column), unitOf(table.titles[places.get(column) ?? -1] ?? ""));
    return read.ok
      ? read.value
      : tell(row, column, "intake.readings.no-length", message("intake.hint.readings.length"));
  };
  const readings = table.rows.flatMap((row): TakenReading[] => {
    const face = cellOf(row, "face");
    if (!faces.includes(face))
      tell(
        row,
        "face",
        "intake.readings.no-face",
        message("intake.hint.readings.faces", { faces: [...faces] }),
      );
    const [x, y, outward] = (["x", "y", "outward"] as const).map((column) => lengthOf(row, column));
    return x === undefined || y === undefined || outward === undefined ? [] : [{ face, x, y, outward }];
  });
  if (findings.length > 0) return refused(findings);
  if (readings.length === 0) {
    const says = message("intake.readings.none", { file: table.name });
    return refused([fault(says, message("intake.hint.readings.columns"))]);
  }
  return { ok: true, readings };
}

function refused(findings: readonly Finding[]): ReadReadings {
  return { ok: false, findings };
}

function fault(says: Message, hint: Message): Finding {
  return finding({ code: "F036", outcome: "fail", where: {}, says, hint });
}

/** What a column is called in any language. */
function namesOf(column: Column): string[] {
  return [column, ...LANGUAGES.map((language) => template(`intake.readings.${column}`, language) ?? "")].map(
    reducedTitle,
  );
}
