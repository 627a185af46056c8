/** Reads plain lists of stock and demand in the schema `cutting-bench-1`, telling everything wrong with one at once. */

export type SawProblemCode = "not-an-object" | "not-a-list" | "not-a-number" | "out-of-range" | "unsupported";

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
}

export interface SawStock {
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly count: number | undefined;
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
}

/** What the saw works towards; a list that asks for something else is refused. */
const objectives: readonly unknown[] = ["min-sheets", "min-boards", "min-cost"];

/** The lists in a document: one list by itself, or all the `instances` of a collection. */
export function readSawLists(document: unknown): { lists: SawList[]; problems: SawProblem[] } {
  if (!isObject(document)) {
    return { lists: [], problems: [{ code: "not-an-object", where: "", value: document }] };
  }
  const { kind, objective, instances } = document;
  if (objective !== undefined && !objectives.includes(objective)) {
    return { lists: [], problems: [{ code: "unsupported", where: "/objective", value: objective }] };
  }
  if (instances !== undefined && !Array.isArray(instances)) {
    return { lists: [], problems: [{ code: "not-a-list", where: "/instances", value: instances }] };
  }
  const problems: SawProblem[] = [];
  const heading = { kind, objective };
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
  for (const key of unsupported(value, flat)) {
    problems.push({ code: "unsupported", where: `${where}/${key}`, value: value[key] });
  }
  const read = new Reader(problems);
  const stock = read.rows(
    flat ? value.sheets : value.stock,
    `${where}/${flat ? "sheets" : "stock"}`,
    (row, at) => {
      const next = flat ? 2 : 1;
      return {
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
    return {
      width: read.number(row[0], `${at}/0`, { least: 1e-3, most: longest }),
      height: flat ? read.number(row[1], `${at}/1`, { least: 1e-3, most: longest }) : 0,
      quantity: read.whole(row[flat ? 2 : 1] ?? 1, `${at}/${flat ? 2 : 1}`),
    };
  });
  const kerf = read.number(value.kerf ?? 0, `${where}/kerf`, { least: 0, most: longest });
  const trim = read.number(value.trim ?? 0, `${where}/trim`, { least: 0, most: longest });
  const pieces = items.reduce((sum, item) => sum + item.quantity, 0);
  if (pieces > mostPieces) problems.push({ code: "out-of-range", where: `${where}/items`, value: pieces });
  if (problems.length > before) return undefined;
  const id = typeof value.id === "string" ? value.id : "";
  return { id, kind: flat ? "2d" : "1d", stock, items, kerf, trim };
}

/** What the saw does not take into account yet is refused rather than passed over. */
function unsupported(value: Record<string, unknown>, flat: boolean): string[] {
  const keys = flat ? ["defects", "params"] : ["params"];
  return keys.filter((key) => {
    const found = value[key];
    if (found === undefined || found === null) return false;
    return Array.isArray(found) ? found.length > 0 : true;
  });
}

class Reader {
  private readonly problems: SawProblem[];

  constructor(problems: SawProblem[]) {
    this.problems = problems;
  }

  rows<Row>(value: unknown, where: string, read: (row: readonly unknown[], at: string) => Row): Row[] {
    if (!Array.isArray(value)) {
      this.problems.push({ code: "not-a-list", where, value });
      return [];
    }
    return value.flatMap((row: unknown, index) => {
      const at = `${where}/${index}`;
      if (Array.isArray(row)) return [read(row, at)];
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
