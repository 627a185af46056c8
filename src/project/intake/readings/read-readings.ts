/** Readings of walls from a table, one a row: every fault told by row, column, value and mend, and none taken where one fails. */
import { type Finding, finding, type Outcome } from "../../../findings/finding.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { type Message, message } from "../../../text/message.ts";
import { parseLength } from "../../../units/feet-inch.ts";
import type { Face } from "../../schema/project.ts";
import { length as lengthShape } from "../../schema/values.ts";
import { columnsMissing, type Reads } from "../table/columns.ts";
import type { Table, TableRow } from "../table/table.ts";
import { unitOf } from "../table/title.ts";
import { READING_COLUMNS, type ReadingColumn } from "./columns.ts";
import "../texts.ts";

/** A wall may be built so much longer or higher than it is drawn (mm, common practice); what lies further off is a slip of unit or column. */
const BEYOND_MM = 150;

/** More rows than this are not named one by one. */
const MOST_TOLD = 12;

/** In the face frame (mm); `outward` positive where the wall stands out from the plumb plane. */
export interface TakenReading {
  readonly face: string;
  readonly x: number;
  readonly y: number;
  readonly outward: number;
}

export type ReadReadings =
  | {
      readonly ok: true;
      readonly readings: readonly TakenReading[];
      /** Of places that wait for their reading. */
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** @param faces of the project */
export function readReadings(
  table: Table,
  { faces, ...reads }: Reads<ReadingColumn> & { readonly faces: readonly Pick<Face, "id" | "outline">[] },
): ReadReadings {
  const missing = columnsMissing(table, READING_COLUMNS, reads.mapping);
  if (missing) return { ok: false, findings: [missing] };
  const reading = new Reading(table, reads, faces);
  const readings = table.rows.flatMap((row) => reading.reading(row) ?? []);
  const { findings, unread } = reading;
  if (findings.length > 0) return { ok: false, findings };
  if (readings.length === 0) {
    const says = message("intake.readings.none", { file: table.name });
    return { ok: false, findings: [fault("fail", says, message("intake.hint.readings.none"))] };
  }
  if (unread.length === 0) return { ok: true, readings, findings };
  const rows = unread.slice(0, MOST_TOLD).map(String);
  const says = message("intake.readings.unread", {
    file: table.name,
    count: unread.length,
    rows: unread.length > MOST_TOLD ? [...rows, "…"] : rows,
  });
  return { ok: true, readings, findings: [fault("attention", says)] };
}

class Reading {
  readonly findings: Finding[] = [];
  /** Rows of places that nothing was read at yet, as the table to fill in has them. */
  readonly unread: number[] = [];

  private readonly table: Table;
  private readonly reads: Reads<ReadingColumn>;
  private readonly faces: readonly Pick<Face, "id" | "outline">[];

  constructor(table: Table, reads: Reads<ReadingColumn>, faces: readonly Pick<Face, "id" | "outline">[]) {
    this.table = table;
    this.reads = reads;
    this.faces = faces;
  }

  reading(row: TableRow): TakenReading | undefined {
    const face = this.face(row);
    const x = this.place(row, "x", face);
    const y = this.place(row, "y", face);
    if (this.text(row, "outward") === "") {
      this.unread.push(row.number);
      return undefined;
    }
    const outward = this.length(row, "outward");
    return face && x !== undefined && y !== undefined && outward !== undefined
      ? { face: face.id, x, y, outward }
      : undefined;
  }

  private text(row: TableRow, column: ReadingColumn): string {
    return String(row.cells[this.reads.mapping[column] ?? -1] ?? "");
  }

  private title(column: ReadingColumn): string {
    return this.table.titles[this.reads.mapping[column] ?? -1] ?? "";
  }

  private fault(row: TableRow, column: ReadingColumn, what: string, more: Message["values"] = {}): undefined {
    const values = {
      file: this.table.name,
      row: String(row.number),
      column: this.title(column),
      value: this.text(row, column),
      ...more,
    };
    const hint = message(`intake.hint.readings.${what}`, more);
    this.findings.push(fault("fail", message(`intake.readings.${what}`, values), hint));
  }

  /** By its name, in capitals or not: faces differ by more than these. */
  private face(row: TableRow): Pick<Face, "id" | "outline"> | undefined {
    const said = this.text(row, "face").toUpperCase();
    return (
      this.faces.find(({ id }) => id.toUpperCase() === said) ??
      this.fault(row, "face", "face", { faces: this.faces.map(({ id }) => id) })
    );
  }

  private length(row: TableRow, column: Exclude<ReadingColumn, "face">): number | undefined {
    const read = parseLength(this.text(row, column), unitOf(this.title(column), this.reads.unit));
    if (!read.ok) return this.fault(row, column, "length");
    return lengthShape.safeParse(read.value).success ? read.value : this.fault(row, column, "far");
  }

  private place(
    row: TableRow,
    column: "x" | "y",
    face: Pick<Face, "id" | "outline"> | undefined,
  ): number | undefined {
    const at = this.length(row, column);
    if (at === undefined || !face) return at;
    const [from, to] = polygonBounds(face.outline)[column];
    return at >= from - BEYOND_MM && at <= to + BEYOND_MM
      ? at
      : this.fault(row, column, "off", { face: face.id, from, to });
  }
}

function fault(outcome: Outcome, says: Message, hint?: Message): Finding {
  return finding({ code: "F036", outcome, where: {}, says, ...(hint && { hint }) });
}
