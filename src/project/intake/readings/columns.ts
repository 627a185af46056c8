/** The columns of a table of readings. */
import type { TableColumns } from "../table/columns.ts";

const TITLES = {
  face: "schedule.column.face",
  x: "schedule.column.x",
  y: "schedule.column.y",
  outward: "schedule.column.outward",
} as const;

export type ReadingColumn = keyof typeof TITLES;

export const READING_COLUMNS = {
  titles: TITLES,
  needed: ["face", "x", "y", "outward"],
  lengths: ["x", "y", "outward"],
} as const satisfies TableColumns<ReadingColumn>;
