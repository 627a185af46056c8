/** Field references of the sheet (ISO 5457): figures along the top, letters down the side, so that a note can say 6 C. */
import type { Point } from "../../geometry/point.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Pick } from "../picks/pick.ts";

/** The field in which a pick lies. */
export type FieldFinder = (pick: Pick) => string | undefined;

export interface Fields {
  /** What the view shows of the drawing when it shows all. */
  readonly rect: Rect;
  readonly columns: number;
  readonly rows: number;
}

/** About the side of a field, pixels. */
const SIDE = 122;

export function fieldsOf(rect: Rect, { width, height }: { width: number; height: number }): Fields {
  return {
    rect,
    columns: Math.max(2, Math.round(width / SIDE)),
    rows: Math.max(2, Math.round(height / SIDE)),
  };
}

/** I and O are left out, as they read like 1 and 0. */
const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

export function letter(row: number): string {
  return LETTERS[row % LETTERS.length] ?? "";
}

/** `6 C`, or undefined outside the sheet. */
export function fieldAt({ rect, columns, rows }: Fields, [x, y]: Point): string | undefined {
  const column = Math.floor(((x - rect.x[0]) / (rect.x[1] - rect.x[0])) * columns);
  const row = Math.floor(((rect.y[1] - y) / (rect.y[1] - rect.y[0])) * rows);
  if (column < 0 || column >= columns || row < 0 || row >= rows) return undefined;
  return `${column + 1} ${letter(row)}`;
}
