/** Reads plain lists of stock and demand in the schema `cutting-bench-1`, telling everything wrong with one at once. */

import type { Rectangle, Span } from "./model.ts";

export type SawProblemCode =
  | "not-an-object"
  | "not-a-list"
  | "not-a-number"
  | "out-of-range"
  | "unsupported"
  | "not-together"
  | "not-sound";

/** Something in a list that can't be used: where (JSON pointer), and the value found. */
export interface SawProblem {
  readonly code: SawProblemCode;
  readonly where: string;
  readonly value: unknown;
}

/** One list: rectangles with sheets, or lengths with bars. Widths and lengths in the list's own unit. */
export interface SawList {
  readonly id: string;
  readonly kind: "2d" | "1d";
  /** 2d: [width, height, cost, count]; 1d: [length, 0, cost, count]. */
  readonly stock: readonly SawStock[];
  readonly items: readonly SawItem[];
  readonly kerf: number;
  readonly trim: number;
  /** 2d: the saw turns at most this often. */
  readonly stages: number | undefined;
  /** 2d: how far cuts of the first turn may lie apart. */
  readonly furthestFirstCuts: number | undefined;
}

export interface SawStock {
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly count: number | undefined;
  /** Its place in the list. */
  readonly row: number;
  /** 2d: its number among all sheets, where it is told apart from others of its row by its defects. */
  readonly sheetNumber?: number;
  readonly defects?: readonly Rectangle[];
  /** 1d: the board that it is a sound stretch of, by its place in `boards`, and where it starts on it. */
  readonly board?: number;
  readonly from?: number;
}

export interface SawItem {
  readonly width: number;
  readonly height: number;
  readonly quantity: number;
}

/** More pieces than this in one list are refused: the plan would outgrow memory before it was of use. */
const mostPieces = 20_000;
const longest = 1e7;

/** What is said once for all lists of a document. */
interface Heading {
  readonly kind: unknown;
  readonly objective: unknown;
  /** What the caller asks of all lists in place of their own. */
  readonly stages: number | undefined;
}

/** What the saw works towards; a list that asks for something else is refused. */
const objectives: readonly unknown[] = ["min-sheets", "min-boards", "min-cost"];

/** The lists in a document: one list by itself, or all the `instances` of a collection. */
export function readSawLists(
  document: unknown,
  { stages }: { readonly stages?: number } = {},
): { lists: SawList[]; problems: SawProblem[] } {
  if (!isObject(document)) {
    return { lists: [], problems: [{ code: "not-an-object", where: "", value: document }] };
  }
  const { schema, kind, objective, instances } = document;
  if (schema !== undefined && schema !== SCHEMA) {
    return { lists: [], problems: [{ code: "unsupported", where: "/schema", value: schema }] };
  }
  if (objective !== undefined && !objectives.includes(objective)) {
    return { lists: [], problems: [{ code: "unsupported", where: "/objective", value: objective }] };
  }
  if (instances !== undefined && !Array.isArray(instances)) {
    return { lists: [], problems: [{ code: "not-a-list", where: "/instances", value: instances }] };
  }
  const problems: SawProblem[] = [];
  if (instances !== undefined) refuseUnknown(document, [...DESCRIBING, "instances"], "", problems);
  const heading = { kind, objective, stages };
  const read =
    instances === undefined
      ? [readList(document, "", heading, problems)]
      : instances.map((one: unknown, index) => readList(one, `/instances/${index}`, heading, problems));
  return { lists: read.filter((list) => list !== undefined), problems };
}

function readList(
  value: unknown,
  where: string,
  heading: Heading,
  problems: SawProblem[],
): SawList | undefined {
  const before = problems.length;
  if (!isObject(value)) {
    problems.push({ code: "not-an-object", where, value });
    return undefined;
  }
  const flat = heading.kind === "2d" || (heading.kind !== "1d" && value.sheets !== undefined);
  refuseUnknown(value, [...LIST_KEYS, ...(flat ? SHEET_KEYS : BAR_KEYS)], where, problems);
  const read = new Reader(problems);
  const stock = read.rows(
    flat ? value.sheets : value.stock,
    `${where}/${flat ? "sheets" : "stock"}`,
    (row, at, place): SawStock => {
      const next = flat ? 2 : 1;
      refuseBeyond(row, at, flat ? 4 : 5, problems);
      return {
        row: place,
        ...(flat || !isGiven(row[3]) ? {} : { board: read.whole(row[3], `${at}/3`) }),
        ...(flat || !isGiven(row[4])
          ? {}
          : { from: read.number(row[4], `${at}/4`, { least: 0, most: longest }) }),
        width: read.number(row[0], `${at}/0`, { least: 1e-3, most: longest }),
        height: flat ? read.number(row[1], `${at}/1`, { least: 1e-3, most: longest }) : 0,
        cost: read.number(row[next] ?? 1, `${at}/${next}`, { least: 0, most: 1e12 }),
        count:
          row[next + 1] === undefined || row[next + 1] === null
            ? undefined
            : read.whole(row[next + 1], `${at}/${next + 1}`),
      };
    },
  );
  const items = read.rows(value.items, `${where}/items`, (row, at) => {
    // A worth is of no matter when all pieces must be cut; with no objective stated it may be the whole point.
    for (const column of heading.objective === undefined ? [3, 4] : [4]) {
      const found = flat ? (row[column] ?? undefined) : undefined;
      if (found !== undefined) problems.push({ code: "unsupported", where: `${at}/${column}`, value: found });
    }
    refuseBeyond(row, at, flat ? 5 : 2, problems);
    return {
      width: read.number(row[0], `${at}/0`, { least: 1e-3, most: longest }),
      height: flat ? read.number(row[1], `${at}/1`, { least: 1e-3, most: longest }) : 0,
      quantity: read.whole(row[flat ? 2 : 1] ?? 1, `${at}/${flat ? 2 : 1}`),
    };
  });
  const kerf = read.number(value.kerf ?? 0, `${where}/kerf`, { least: 0, most: longest });
  const trim = read.number(value.trim ?? 0, `${where}/trim`, { least: 0, most: longest });
  const rules = flat ? rulesOf(value.params, `${where}/params`, read, problems) : NO_RULES;
  const whole = flat
    ? withDefects(stock, defectsOf(value.defects, `${where}/defects`, read), `${where}/defects`, problems)
    : stock;
  if (!flat) checkBoards(stock, value.boards, where, read, problems);
  if (whole.some(({ defects }) => defects)) {
    // Sheets with defects are cut part by part, each with first cuts of its own.
    if ((rules.stages ?? rules.furthestFirstCuts) !== undefined)
      problems.push({ code: "not-together", where: `${where}/params`, value: value.params });
    else if (heading.stages !== undefined)
      problems.push({ code: "not-together", where: `${where}/defects`, value: heading.stages });
  }
  const pieces = items.reduce((sum, item) => sum + item.quantity, 0);
  if (pieces > mostPieces) problems.push({ code: "out-of-range", where: `${where}/items`, value: pieces });
  if (problems.length > before) return undefined;
  const id = typeof value.id === "string" ? value.id : "";
  return { id, kind: flat ? "2d" : "1d", stock: whole, items, kerf, trim, ...rules };
}

/** What may stand in a document beside its lists, and in every list. What only describes is passed over. */
const DESCRIBING = ["schema", "kind", "objective", "source", "notes", "refs"];
const LIST_KEYS = [...DESCRIBING, "id", "fam", "ref", "note", "items", "kerf", "trim"];
const SHEET_KEYS = ["sheets", "defects", "params"];
const BAR_KEYS = ["stock", "boards"];
const SCHEMA = "cutting-bench-1";

/** What the saw does not take into account is refused rather than passed over. */
function refuseUnknown(
  value: Record<string, unknown>,
  known: readonly string[],
  where: string,
  problems: SawProblem[],
): void {
  for (const key of Object.keys(value)) {
    if (!known.includes(key) && isGiven(value[key])) {
      problems.push({ code: "unsupported", where: `${where}/${key}`, value: value[key] });
    }
  }
}

function refuseBeyond(row: readonly unknown[], at: string, length: number, problems: SawProblem[]): void {
  row.slice(length).forEach((value, index) => {
    if (isGiven(value)) problems.push({ code: "unsupported", where: `${at}/${length + index}`, value });
  });
}

function isGiven(value: unknown): boolean {
  return value !== undefined && value !== null;
}

type Rules = Pick<SawList, "stages" | "furthestFirstCuts">;
const NO_RULES: Rules = { stages: undefined, furthestFirstCuts: undefined };

/** `stages`: turns of the saw; `max1cut`: how far cuts of the first turn may lie apart. */
function rulesOf(value: unknown, where: string, read: Reader, problems: SawProblem[]): Rules {
  if (!isGiven(value)) return NO_RULES;
  if (!isObject(value)) {
    problems.push({ code: "not-an-object", where, value });
    return NO_RULES;
  }
  refuseUnknown(value, ["stages", "max1cut"], where, problems);
  const { stages, max1cut } = value;
  return {
    stages: isGiven(stages) ? read.whole(stages, `${where}/stages`) : undefined,
    furthestFirstCuts: isGiven(max1cut)
      ? read.number(max1cut, `${where}/max1cut`, { least: 1e-3, most: longest })
      : undefined,
  };
}

interface SheetDefect extends Rectangle {
  readonly sheet: number;
}

/** Rows [sheet, x, y, width, height]. */
function defectsOf(value: unknown, where: string, read: Reader): SheetDefect[] {
  if (!isGiven(value)) return [];
  return read.rows(value, where, (row, at) => {
    const place = (index: number) => read.number(row[index], `${at}/${index}`, { least: 0, most: longest });
    return {
      sheet: read.whole(row[0], `${at}/0`),
      x: place(1),
      y: place(2),
      width: place(3),
      height: place(4),
    };
  });
}

/** Sheets with defects are told apart from the others of their row: they are numbered row by row, from 0. */
function withDefects(
  stock: readonly SawStock[],
  defects: readonly SheetDefect[],
  where: string,
  problems: SawProblem[],
): SawStock[] {
  let first = 0;
  const rows = stock.flatMap((one): SawStock[] => {
    const end = first + (one.count ?? Number.POSITIVE_INFINITY);
    const numbers = [...new Set(defects.map(({ sheet }) => sheet))].filter(
      (sheet) => sheet >= first && sheet < end,
    );
    first = end;
    const apart = numbers.map((sheetNumber) => ({
      ...one,
      count: 1,
      sheetNumber,
      defects: defects.flatMap(({ sheet, ...box }) => (sheet === sheetNumber ? [box] : [])),
    }));
    const count = one.count === undefined ? undefined : one.count - apart.length;
    return [...apart, ...(count === 0 && apart.length > 0 ? [] : [{ ...one, count }])];
  });
  defects.forEach((defect, at) => {
    const row = rows.find(({ sheetNumber }) => sheetNumber === defect.sheet);
    const inside =
      row !== undefined && defect.x + defect.width <= row.width && defect.y + defect.height <= row.height;
    if (!inside)
      problems.push({ code: "out-of-range", where: `${where}/${at}`, value: Object.values(defect) });
  });
  return rows;
}

/** Stock that is said to be a stretch of a board must lie on it and clear of its defects. Rows of `boards`: [length, [[from, to], …]]. */
function checkBoards(
  stock: readonly SawStock[],
  value: unknown,
  where: string,
  read: Reader,
  problems: SawProblem[],
): void {
  const boards = isGiven(value)
    ? read.rows(value, `${where}/boards`, (row, at) => ({
        length: read.number(row[0], `${at}/0`, { least: 1e-3, most: longest }),
        defects: read.rows(row[1] ?? [], `${at}/1`, (span, place): Span => {
          const end = (index: number) =>
            read.number(span[index], `${place}/${index}`, { least: 0, most: longest });
          return { from: end(0), to: end(1) };
        }),
      }))
    : [];
  for (const { row, board, from = 0, width } of stock) {
    if (board === undefined) continue;
    const on = boards[board];
    const at = `${where}/stock/${row}`;
    const to = from + width;
    if (on === undefined || to > on.length)
      problems.push({ code: "out-of-range", where: `${at}/3`, value: board });
    else if (on.defects.some((defect) => defect.from < to && defect.to > from)) {
      problems.push({ code: "not-sound", where: at, value: from });
    }
  }
}

class Reader {
  private readonly problems: SawProblem[];

  constructor(problems: SawProblem[]) {
    this.problems = problems;
  }

  rows<Row>(
    value: unknown,
    where: string,
    read: (row: readonly unknown[], at: string, place: number) => Row,
  ): Row[] {
    if (!Array.isArray(value)) {
      this.problems.push({ code: "not-a-list", where, value });
      return [];
    }
    return value.flatMap((row: unknown, index) => {
      const at = `${where}/${index}`;
      if (Array.isArray(row)) return [read(row, at, index)];
      this.problems.push({ code: "not-a-list", where: at, value: row });
      return [];
    });
  }

  number(value: unknown, where: string, range: { least: number; most: number }): number {
    if (typeof value !== "number" || !Number.isFinite(value)) {
      this.problems.push({ code: "not-a-number", where, value });
      return 0;
    }
    if (value < range.least || value > range.most) this.problems.push({ code: "out-of-range", where, value });
    return value;
  }

  whole(value: unknown, where: string): number {
    const number = this.number(value, where, { least: 0, most: mostPieces });
    if (!Number.isInteger(number)) this.problems.push({ code: "out-of-range", where, value });
    return number;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
