/** The columns of a table of boards. */
import type { TableColumns } from "../table/columns.ts";

const TITLES = {
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

export type PileColumn = keyof typeof TITLES;

export const PILE_COLUMNS = {
  titles: TITLES,
  also: {
    length: "schedule.column.length",
    width: "schedule.column.width",
    thickness: "schedule.column.thickness",
    face: "schedule.column.face",
  },
  needed: ["board", "lot", "length", "width", "thickness"],
  lengths: ["length", "width", "thickness", "defects", "wane"],
} as const satisfies TableColumns<PileColumn>;
