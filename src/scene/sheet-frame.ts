/**
 * The frame of a sheet after ISO 5457: the border 20 mm from the left edge and 10 mm from the others, centring marks,
 * and fields of 50 mm counted from the sheet's middle, letters down the sides without I and O, numerals along the top.
 * The figures are from memory of the standard.
 */
import type { Rect } from "../geometry/rect.ts";
import { rectOutline } from "../geometry/rect.ts";
import type { PaperSize } from "../units/paper-sizes.ts";
import type { Item } from "./model.ts";
import { layerName } from "./roles.ts";

const LEFT = 20;
const OTHER = 10;
const STRIP = 5;
const FIELD = 50;
const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
const TEXT = 2.5;
const LAYER = layerName("FRAME");
const TEXT_LAYER = layerName("FRAME", "T");

/** The frame line's rectangle; everything drawn lies within. */
export function frameRect({ width, height }: PaperSize): Rect {
  return { x: [LEFT, width - OTHER], y: [OTHER, height - OTHER] };
}

/** The ends of the fields along a side, from 0: whole fields on both sides of the middle, the last takes the rest. */
export function fieldEnds(length: number): number[] {
  const half = Math.max(1, Math.round(length / 2 / FIELD));
  const inner = Array.from({ length: 2 * half - 1 }, (_, i) => length / 2 + (i + 1 - half) * FIELD);
  return [0, ...inner, length];
}

export function frameItems(size: PaperSize): Item[] {
  const { x, y } = frameRect(size);
  const outer: Rect = { x: [x[0] - STRIP, x[1] + STRIP], y: [y[0] - STRIP, y[1] + STRIP] };
  const columns = fieldEnds(size.width);
  const rows = fieldEnds(size.height);
  const items: Item[] = [
    { kind: "polygon", layer: LAYER, outline: rectOutline(outer), line: "detail" },
    { kind: "polygon", layer: LAYER, outline: rectOutline({ x, y }), line: "border" },
  ];
  const tick = (from: readonly [number, number], to: readonly [number, number]): void => {
    items.push({ kind: "line", layer: LAYER, from, to, line: "detail" });
  };
  const label = (at: readonly [number, number], text: string): void => {
    items.push({
      kind: "text",
      layer: TEXT_LAYER,
      at,
      text,
      height: TEXT,
      anchor: "middle",
      baseline: "middle",
      ink: "second",
    });
  };
  const middles = (ends: readonly number[], [from, to]: readonly [number, number]): number[] =>
    ends.slice(1).map((end, i) => (Math.max(from, ends[i] as number) + Math.min(to, end)) / 2);
  for (const at of columns.slice(1, -1)) {
    tick([at, outer.y[0]], [at, y[0]]);
    tick([at, y[1]], [at, outer.y[1]]);
  }
  for (const at of rows.slice(1, -1)) {
    tick([outer.x[0], at], [x[0], at]);
    tick([x[1], at], [outer.x[1], at]);
  }
  middles(columns, x).forEach((at, i) => {
    for (const side of [y[1] + STRIP / 2, y[0] - STRIP / 2]) label([at, side], String(i + 1));
  });
  middles(rows, y).forEach((at, i) => {
    const letter = LETTERS[rows.length - 2 - i] ?? "";
    for (const side of [x[0] - STRIP / 2, x[1] + STRIP / 2]) label([side, at], letter);
  });
  return [...items, ...centringMarks(size, outer)];
}

function centringMarks({ width, height }: PaperSize, outer: Rect): Item[] {
  const [cx, cy] = [width / 2, height / 2];
  const mark = (from: readonly [number, number], to: readonly [number, number]): Item => {
    return { kind: "line", layer: LAYER, from, to, line: "border" };
  };
  return [
    mark([cx, outer.y[1]], [cx, outer.y[1] - STRIP]),
    mark([cx, outer.y[0]], [cx, outer.y[0] + STRIP]),
    mark([outer.x[0], cy], [outer.x[0] + STRIP, cy]),
    mark([outer.x[1], cy], [outer.x[1] - STRIP, cy]),
  ];
}

/** The field that a point of the sheet lies in, as findings and labels cite it: `6 C`. */
export function fieldOf(size: PaperSize, [x, y]: readonly [number, number]): string {
  const column = fieldEnds(size.width)
    .slice(1)
    .findIndex((end) => x <= end);
  const rows = fieldEnds(size.height);
  const row = rows.slice(1).findIndex((end) => y <= end);
  return `${column + 1} ${LETTERS[rows.length - 2 - row] ?? ""}`;
}
