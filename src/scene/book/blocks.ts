/** Lines of a page of the book as one reader has them, and pages that are filled with them. */
import type { Reader } from "../../text/say.ts";
import type { Item, SceneText, SymbolName, TextStyle } from "../model.ts";
import { layerName } from "../roles.ts";
import { sayText } from "../shapes.ts";
import { shiftItems } from "../shift.ts";
import { wrapText } from "../text-widths.ts";

/** Drawn from y = 0 down, mm on paper. */
export interface Block {
  readonly items: readonly Item[];
  readonly height: number;
  /** Stands with the block after it: a heading is no last line of a page. */
  readonly withNext?: true;
  /** Name by which other pages lead here. */
  readonly anchor?: string;
}

export interface BlockCell extends Pick<TextStyle, "weight" | "ink"> {
  readonly text: SceneText;
  /** From the left edge, and how wide its lines may be (mm). */
  readonly at: number;
  readonly width: number;
  /** Its end stands at the right of its width. */
  readonly end?: true;
  /** Name of the sheet that it leads to. */
  readonly link?: string;
}

/** Height of capitals, mm; from base line to base line, in heights of capitals. */
const TEXT = 2.5;
const LEADING = 1.75;
const BETWEEN = 0.9;
const WORDS = layerName("FRAME", "T");

export interface BlockLook extends Pick<Block, "withNext" | "anchor"> {
  readonly height?: number;
  /** A rule over it. */
  readonly ruled?: true;
  /** Left free over it, mm. */
  readonly above?: number;
  readonly symbol?: { readonly name: SymbolName; readonly at: number };
}

/** What lines of text are set for: the book is words from edge to edge, and set for several readers at once would be full of gaps. */
export interface BookType {
  readonly reader: Reader;
  /** Of its lines, mm. */
  readonly width: number;
}

export function block(
  cells: readonly BlockCell[],
  { reader }: Pick<BookType, "reader">,
  look: BlockLook = {},
): Block {
  const { height = TEXT, ruled, above = 0, symbol, withNext, anchor } = look;
  const lines = cells.map(
    ({ text, width, weight = "regular" }) =>
      wrapText({ text: sayText(text, reader), width, height, weight }).length,
  );
  const top = -above - (ruled ? 2 : 0);
  const items = cells.map(
    ({ text, at, width, weight = "regular", ink, end, link }): Item => ({
      kind: "text",
      layer: WORDS,
      at: [end ? at + width : at, top],
      text,
      height,
      weight,
      baseline: "top",
      wrapWidth: width,
      ...(end && { anchor: "end" as const }),
      ...(ink && { ink }),
      ...(link !== undefined && { link }),
    }),
  );
  if (ruled) {
    const right = Math.max(...cells.map(({ at, width }) => at + width));
    items.unshift({
      kind: "line",
      layer: layerName("FRAME"),
      from: [0, -above - 0.6],
      to: [right, -above - 0.6],
      line: "dimension",
    });
  }
  if (symbol) {
    items.push({
      kind: "symbol",
      layer: layerName("FINDNG"),
      at: [symbol.at, top - height / 2],
      symbol: symbol.name,
      size: 2.6,
    });
  }
  const high = ((Math.max(1, ...lines) - 1) * LEADING + 1 + 0.35) * height + BETWEEN - top;
  return { items, height: high, ...(withNext && { withNext }), ...(anchor !== undefined && { anchor }) };
}

/** Blocks on pages of one height; one that is higher than a page stands alone on its own. */
export function onPages(blocks: readonly Block[], height: number): Block[][] {
  const pages: Block[][] = [];
  let left = 0;
  for (let i = 0; i < blocks.length; ) {
    const together: Block[] = [];
    do together.push(blocks[i++] as Block);
    while (together.at(-1)?.withNext && i < blocks.length);
    const high = together.reduce((sum, one) => sum + one.height, 0);
    const page = pages.at(-1);
    if (page && high <= left) page.push(...together);
    else {
      pages.push(together);
      left = height;
    }
    left -= high;
  }
  return pages;
}

export function pageItems(blocks: readonly Block[]): Item[] {
  let top = 0;
  return blocks.flatMap(({ items, height }) => {
    const moved = shiftItems(items, { dx: 0, dy: top });
    top -= height;
    return moved;
  });
}
