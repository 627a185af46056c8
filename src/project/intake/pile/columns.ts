/** The columns of a table of boards: what each is called in every language, and which column of a file is meant by which. */
import { LANGUAGES, template } from "../../../text/catalogue.ts";
import type { Table } from "../table/table.ts";
import { reducedTitle, withoutUnit } from "../table/title.ts";

/** Each with its title's key, in the order of the template. */
export const PILE_COLUMNS = {
  board: "schedule.column.board",
  lot: "schedule.column.lot",
  length: "schedule.column.board-length",
  width: "schedule.column.board-width",
  thickness: "schedule.column.board-thickness",
  defects: "schedule.column.defects",
  wane: "schedule.column.wane",
  face: "schedule.column.board-face",
  grade: "schedule.column.board-grade",
  species: "schedule.column.species",
  from: "schedule.column.lot-from",
} as const;

/** Other titles that say as much. */
const ALSO: Readonly<Partial<Record<PileColumn, string>>> = {
  length: "schedule.column.length",
  width: "schedule.column.width",
  thickness: "schedule.column.thickness",
  face: "schedule.column.face",
};

export type PileColumn = keyof typeof PILE_COLUMNS;

/** What every board must say. */
export const NEEDED: readonly PileColumn[] = ["board", "lot", "length", "width", "thickness"];

/** A field of the file's own titles, by its place. */
export type PileMapping = Readonly<Partial<Record<PileColumn, number>>>;

/** Where a column's title is one of ours, with or without a unit behind it; what is said of columns goes before. */
export function mapColumns(
  { titles }: Table,
  said: Readonly<Partial<Record<PileColumn, string>>> = {},
): PileMapping {
  const plain = titles.map((title) => reducedTitle(withoutUnit(title)));
  const mapping: Partial<Record<PileColumn, number>> = {};
  for (const column of Object.keys(PILE_COLUMNS) as PileColumn[]) {
    const own = said[column];
    const found =
      own === undefined
        ? plain.findIndex((title) => namesOf(column).includes(title))
        : titles.findIndex((title) => reducedTitle(title) === reducedTitle(own));
    if (found >= 0) mapping[column] = found;
  }
  return mapping;
}

function namesOf(column: PileColumn): string[] {
  const keys = [PILE_COLUMNS[column], ALSO[column] ?? PILE_COLUMNS[column]];
  const titles = keys.flatMap((key) => LANGUAGES.map((language) => template(key, language) ?? ""));
  return [column, ...titles].map(reducedTitle);
}
