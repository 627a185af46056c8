/** Tables for the reader: titles in the reader's language, lengths in millimetres and, where read so, in feet and inches. */
import { type Message, message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { printLength } from "../../units/feet-inch.ts";
import { MM_PER_INCH } from "../../units/length.ts";
import { cutLengthMm, gapMm, positionMm } from "../../units/rounding.ts";
import { type Cell, csvText } from "./write.ts";

export interface CsvFile {
  readonly name: string;
  /** Titles, then a record a row: what the text says. Each is made when it is asked for. */
  readonly records: Iterable<readonly Cell[]>;
  /** The whole of it, made anew each time. */
  readonly text: string;
}

export interface Column<Row> {
  readonly titles: readonly Message[];
  readonly cells: (row: Row) => readonly Cell[];
}

/** A column of text or numbers; a unit stands in its title. */
export function column<Row>(name: string, cell: (row: Row) => Cell, unit?: string): Column<Row> {
  return titled(`schedule.column.${name}`, cell, unit);
}

/** The same under the title of a key. */
export function titled<Row>(key: string, cell: (row: Row) => Cell, unit?: string): Column<Row> {
  const title = message(key);
  return {
    titles: [unit === undefined ? title : message("schedule.column.in-unit", { name: title, unit })],
    cells: (row) => [cell(row)],
  };
}

/**
 * `cut` and `rip`: down, a piece a little small goes in; `place`: to the nearest; `hole`: up; `size`: as it is, which
 * six decimals show exactly.
 */
type Rounding = "cut" | "rip" | "place" | "hole" | "size";

/** Stops and tapes are read to half a millimetre; fences are set finer, so that 3 1/2 inch stays 88.9; drills come in tenths. */
const STEP_MM: Readonly<Record<Exclude<Rounding, "size">, number>> = {
  cut: 0.5,
  rip: 0.1,
  place: 0.5,
  hole: 0.1,
};

/** Makes length columns for a reader: one in millimetres, and beside it one of text where feet and inches are read. */
export function lengthColumns(reader: Reader) {
  return <Row>(name: string, rounding: Rounding, length: (row: Row) => number | undefined): Column<Row> => {
    const title = message(`schedule.column.${name}`);
    const mm = message("schedule.column.in-unit", { name: title, unit: "mm" });
    if (reader.units === "mm") return { titles: [mm], cells: (row) => [millimetres(length(row), rounding)] };
    return {
      titles: [mm, message("schedule.column.in-feet-inch", { name: title })],
      cells: (row) => {
        const exact = length(row);
        return [millimetres(exact, rounding), feetInch(exact, rounding, reader)];
      },
    };
  };
}

function millimetres(mm: number | undefined, rounding: Rounding): number | undefined {
  if (mm === undefined) return undefined;
  return rounding === "size" ? mm : rounded(mm, rounding, STEP_MM[rounding]);
}

/** Rounded from the exact length, not from the millimetres beside it. */
function feetInch(mm: number | undefined, rounding: Rounding, { denominator }: Reader): string | undefined {
  if (mm === undefined) return undefined;
  const step = MM_PER_INCH / denominator;
  const length = rounding === "size" ? mm : rounded(mm, rounding, step);
  return printLength(length, { display: "feet-inch", denominator });
}

function rounded(mm: number, rounding: Exclude<Rounding, "size">, step: number): number {
  if (rounding === "cut" || rounding === "rip") return cutLengthMm(mm, { step });
  return rounding === "place" ? positionMm(mm, { step }) : gapMm(mm, { step });
}

/** One file: a record of titles, then a record a row. */
export function csvFile<Row>(
  name: string,
  {
    columns,
    rows,
    reader,
  }: { readonly columns: readonly Column<Row>[]; readonly rows: Iterable<Row>; readonly reader: Reader },
): CsvFile {
  const titles = columns.flatMap((one) => one.titles.map((title) => say(title, reader)));
  const records = {
    *[Symbol.iterator]() {
      yield titles;
      for (const row of rows) yield columns.flatMap((one) => one.cells(row));
    },
  };
  return {
    name,
    records,
    get text() {
      return csvText(records);
    },
  };
}
