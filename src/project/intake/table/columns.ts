/** The columns of a table that is taken in: what each is called in every language, and which column of a file is meant by which. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { LANGUAGES, template } from "../../../text/catalogue.ts";
import { message } from "../../../text/message.ts";
import type { LengthUnit } from "../../../units/feet-inch.ts";
import type { Table } from "./table.ts";
import { reducedTitle, unitIn, withoutUnit } from "./title.ts";
import "../texts.ts";

export interface TableColumns<Column extends string> {
  /** Key of each one's title, in the order of the template. */
  readonly titles: Readonly<Record<Column, string>>;
  /** Keys of other titles that say as much. */
  readonly also?: Readonly<Partial<Record<Column, string>>>;
  /** What every row must say. */
  readonly needed: readonly Column[];
  /** Those that hold lengths. */
  readonly lengths: readonly Column[];
}

/** Places of the file's own titles. */
export type Mapping<Column extends string> = Readonly<Partial<Record<Column, number>>>;

/** How the rows of a table are read. */
export interface Reads<Column extends string> {
  readonly mapping: Mapping<Column>;
  /** Of lengths where neither their title nor they themselves give one; millimetres unless told. */
  readonly unit?: LengthUnit | undefined;
}

export function columnsOf<Column extends string>({ titles }: TableColumns<Column>): Column[] {
  return Object.keys(titles) as Column[];
}

/** Where a column's title is one of ours, with or without a unit behind it; what is said of columns goes before. */
export function mapColumns<Column extends string>(
  { titles }: Table,
  columns: TableColumns<Column>,
  said?: Readonly<Partial<Record<Column, string>>>,
): Mapping<Column> {
  const plain = titles.map((title) => reducedTitle(withoutUnit(title)));
  const mapping: Partial<Record<Column, number>> = {};
  for (const column of columnsOf(columns)) {
    const own = said?.[column];
    const found =
      own === undefined
        ? plain.findIndex((title) => namesOf(column, columns).includes(title))
        : titles.findIndex((title) => reducedTitle(title) === reducedTitle(own));
    if (found >= 0) mapping[column] = found;
  }
  return mapping;
}

function namesOf<Column extends string>(
  column: Column,
  { titles, also }: Pick<TableColumns<Column>, "titles" | "also">,
): string[] {
  const keys = [titles[column], also?.[column] ?? titles[column]];
  const names = keys.flatMap((key) => LANGUAGES.map((language) => template(key, language) ?? ""));
  return [column, ...names].map(reducedTitle);
}

/** Undefined where every column is there that each row must say. */
export function columnsMissing<Column extends string>(
  table: Table,
  { titles, needed }: TableColumns<Column>,
  mapping: Mapping<Column>,
): Finding | undefined {
  const missing = needed.filter((column) => mapping[column] === undefined);
  if (missing.length === 0) return undefined;
  const says = message("intake.table.columns", {
    file: table.name,
    columns: missing.map((column) => message(titles[column])),
    titles: [...table.titles],
  });
  return finding({
    code: "F036",
    outcome: "fail",
    where: {},
    says,
    hint: message("intake.hint.table.columns"),
  });
}

/** Whether some column of lengths says nothing of its unit. */
export function lacksUnit<Column extends string>(
  { titles }: Table,
  { lengths }: TableColumns<Column>,
  mapping: Mapping<Column>,
): boolean {
  return lengths.some((column) => {
    const at = mapping[column];
    return at !== undefined && unitIn(titles[at] ?? "") === undefined;
  });
}
