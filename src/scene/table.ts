/**
 * Tables on paper that flow over columns and sheets. A scene knows no reader, so every column is as wide as its widest cell for
 * any of them, and every row as high.
 */
import type { Message } from "../text/message.ts";
import { READERS } from "./bounds.ts";
import type { Item, Scene, SceneText, SymbolName } from "./model.ts";
import { layerName } from "./roles.ts";
import { sayText } from "./shapes.ts";
import { textWidth, wrapText } from "./text-widths.ts";

/** A text; a text that leads to another sheet; a mark of a finding; a box to tick; or nothing. */
export type Cell =
  | SceneText
  | { readonly text: SceneText; readonly link: string }
  | { readonly symbol: SymbolName }
  | "tick box"
  | undefined;

export interface TableColumn<Row> {
  readonly head: SceneText;
  readonly cell: (row: Row) => Cell;
  readonly align?: "start" | "end";
  /** Longest line before it is broken, mm; never broken where absent. */
  readonly wrap?: number;
  readonly bold?: boolean;
}

export interface TableRoom {
  readonly width: number;
  readonly height: number;
  /** Of the first sheet, where something stands over the table there. */
  readonly firstHeight?: number;
}

const TABLE_TEXT = 2.5;
const ROW = 4.6;
const LINE = TABLE_TEXT * 1.75;
const PAD = 1.4;
const BETWEEN = 8;
const TICK = 3.2;
const LAYER = layerName("FRAME");
const WORDS = layerName("FRAME", "T");

interface Measured<Row> {
  readonly column: TableColumn<Row>;
  readonly width: number;
}

interface SetRow<Row> {
  readonly row: Row;
  readonly height: number;
}

/** Scenes of one table, each no larger than the room: side by side where that holds several, then on. */
export function tableScenes<Row>({
  id,
  title,
  columns,
  rows,
  room,
}: {
  id: string;
  title: Message;
  columns: readonly TableColumn<Row>[];
  rows: readonly Row[];
  room: TableRoom;
}): Scene[] {
  if (rows.length === 0) return [];
  const cellsOf = (row: Row): Cell[] => columns.map(({ cell }) => cell(row));
  const widest = columns.map(({ head }) => widthOf(head, { bold: true }));
  const set = rows.map((row): SetRow<Row> => {
    const cells = cellsOf(row);
    columns.forEach((column, i) => {
      widest[i] = Math.max(widest[i] ?? 0, cellWidth(cells[i], column));
    });
    return { row, height: rowHeight(cells, columns) };
  });
  const measured = columns.map((column, i): Measured<Row> => {
    const width = Math.min(widest[i] ?? 0, column.wrap ?? Number.POSITIVE_INFINITY);
    return { column, width: width + 2 * PAD };
  });
  const width = measured.reduce((sum, one) => sum + one.width, 0);
  const abreast = Math.max(1, Math.floor((room.width + BETWEEN) / (width + BETWEEN)));
  const heightOf = (stack: number): number =>
    (stack < abreast ? (room.firstHeight ?? room.height) : room.height) - ROW;
  const stacks = stacked(set, heightOf);
  const pages = Math.ceil(stacks.length / abreast);
  return Array.from({ length: pages }, (_, page): Scene => {
    const own = stacks.slice(page * abreast, (page + 1) * abreast);
    const heights = own.map((stack) => ROW + stack.reduce((sum, { height }) => sum + height, 0));
    return {
      id: page === 0 ? id : `${id}-${page + 1}`,
      title,
      scale: 1,
      toScale: false,
      bounds: { x: [0, own.length * (width + BETWEEN) - BETWEEN], y: [-Math.max(...heights), 0] },
      // Made when it is drawn: a large building's schedule would be held as hundreds of pages of words.
      get items() {
        return own.flatMap((stack, k) =>
          stackItems(stack, { measured, cellsOf, left: k * (width + BETWEEN) }),
        );
      },
    };
  });
}

/** Rows that stand over one another within the height of their stack. */
function stacked<Row>(rows: readonly SetRow<Row>[], heightOf: (stack: number) => number): SetRow<Row>[][] {
  const stacks: SetRow<Row>[][] = [];
  let left = 0;
  for (const row of rows) {
    const last = stacks.at(-1);
    if (last && row.height <= left) last.push(row);
    else {
      stacks.push([row]);
      left = heightOf(stacks.length - 1);
    }
    left -= row.height;
  }
  return stacks;
}

function textOf(cell: Cell): SceneText | undefined {
  if (cell === undefined || cell === "tick box") return undefined;
  if (typeof cell === "string" || "key" in cell) return cell;
  return "text" in cell ? cell.text : undefined;
}

function widthOf(text: SceneText, { bold }: { bold: boolean }): number {
  const weight = bold ? "bold" : "regular";
  const said = typeof text === "string" ? [text] : READERS.map((reader) => sayText(text, reader));
  return Math.max(...said.map((one) => textWidth({ text: one, height: TABLE_TEXT, weight })));
}

function cellWidth<Row>(cell: Cell, { bold = false }: TableColumn<Row>): number {
  const text = textOf(cell);
  return text === undefined ? TICK : widthOf(text, { bold });
}

function rowHeight<Row>(cells: readonly Cell[], columns: readonly TableColumn<Row>[]): number {
  const lines = cells.map((cell, i) => {
    const { wrap, bold } = columns[i] as TableColumn<Row>;
    const text = textOf(cell);
    if (wrap === undefined || text === undefined) return 1;
    const weight = bold ? "bold" : "regular";
    const said = typeof text === "string" ? [text] : READERS.map((reader) => sayText(text, reader));
    return Math.max(
      ...said.map((one) => wrapText({ text: one, width: wrap, height: TABLE_TEXT, weight }).length),
    );
  });
  return ROW + (Math.max(...lines) - 1) * LINE;
}

function stackItems<Row>(
  stack: readonly SetRow<Row>[],
  {
    measured,
    cellsOf,
    left,
  }: { measured: readonly Measured<Row>[]; cellsOf: (row: Row) => readonly Cell[]; left: number },
): Item[] {
  const width = measured.reduce((sum, one) => sum + one.width, 0);
  const rule = (y: number, line: "rule" | "dimension"): Item => ({
    kind: "line",
    layer: LAYER,
    from: [left, y],
    to: [left + width, y],
    line,
  });
  const items: Item[] = [rule(-ROW, "rule")];
  const across = (y: number, each: (one: Measured<Row>, at: number, i: number) => Item[]): void => {
    let at = left;
    measured.forEach((one, i) => {
      items.push(...each(one, at, i).map((item) => item));
      at += one.width;
    });
    if (y < -ROW) items.push(rule(y, "dimension"));
  };
  across(-ROW, ({ column, width: wide }, at) => [
    wordItem(column.head, { column: { ...column, bold: true }, at, wide, top: 0 }),
  ]);
  let top = -ROW;
  for (const { row, height } of stack) {
    const cells = cellsOf(row);
    across(top - height, ({ column, width: wide }, at, i) => cellItems(cells[i], { column, at, wide, top }));
    top -= height;
  }
  return items;
}

interface Place<Row> {
  readonly column: TableColumn<Row>;
  readonly at: number;
  readonly wide: number;
  readonly top: number;
}

function cellItems<Row>(cell: Cell, place: Place<Row>): Item[] {
  if (cell === undefined) return [];
  const middle = place.top - ROW / 2;
  if (cell === "tick box") {
    const [x, y] = [place.at + PAD, middle - TICK / 2];
    const outline = [
      [x, y],
      [x + TICK, y],
      [x + TICK, y + TICK],
      [x, y + TICK],
    ] as const;
    return [{ kind: "polygon", layer: LAYER, outline, line: "visible" }];
  }
  if (typeof cell !== "string" && "symbol" in cell) {
    const at = [place.at + PAD + TICK / 2, middle] as const;
    return [{ kind: "symbol", layer: layerName("FINDNG"), at, symbol: cell.symbol, size: 2.6 }];
  }
  const text = textOf(cell) as SceneText;
  const link = typeof cell !== "string" && "link" in cell ? { link: cell.link } : {};
  return [{ ...wordItem(text, place), ...link }];
}

function wordItem<Row>(
  text: SceneText,
  { column, at, wide, top }: Place<Row>,
): Extract<Item, { kind: "text" }> {
  const { align = "start", wrap, bold } = column;
  return {
    kind: "text",
    layer: WORDS,
    at: [align === "start" ? at + PAD : at + wide - PAD, top - (ROW - TABLE_TEXT) / 2],
    text,
    height: TABLE_TEXT,
    anchor: align,
    baseline: "top",
    ...(bold && { weight: "bold" as const }),
    ...(wrap !== undefined && { wrapWidth: Math.max(wrap, wide - 2 * PAD) }),
  };
}
