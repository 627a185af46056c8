/** Lengths as they are sawn, one over the other: what each gives from its left end, and what is kept. */
import type { CutBar, LengthStock } from "../../../cutting/model.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import { type Message, message } from "../../../text/message.ts";
import { makeScene } from "../../bounds.ts";
import type { Item, Scene } from "../../model.ts";
import { type FillRole, layerName } from "../../roles.ts";
import { TEXT } from "../style.ts";

/** Millimetres on paper: a length is drawn wider than it is, so that its pieces can be read. */
const HIGH = 5;
const STEP = 8;
const BESIDE = 2;
/** Inside a piece, at each end of its text. */
const INSET = 0.6;

export interface LengthsOptions {
  readonly id: string;
  readonly title: Message;
  readonly stock: readonly LengthStock[];
  /** Millimetres of paper for one of the length. */
  readonly scale: number;
  readonly fill: FillRole;
}

export function cutLengthsScene(bars: readonly CutBar[], options: LengthsOptions): Scene {
  const { id, title, stock, scale, fill } = options;
  const stocked = new Map(stock.map((one) => [one.id, one]));
  return makeScene({
    id,
    title,
    scale,
    items: bars.flatMap((bar, row) => {
      const own = stocked.get(bar.stockId);
      return own ? barItems(bar, { stock: own, top: (-row * STEP) / scale, scale, fill }) : [];
    }),
  });
}

function barItems(
  bar: CutBar,
  { stock, top, scale, fill }: { stock: LengthStock; top: number; scale: number; fill: FillRole },
): Item[] {
  const y = [top - HIGH / scale, top] as const;
  const middle = top - HIGH / 2 / scale;
  const box = (from: number, to: number) => rectOutline({ x: [from, to], y });
  const [wood, words] = [layerName("BATTEN"), layerName("BATTEN", "T")];
  const name = stock.board
    ? message("drawing.cut-strip", { board: stock.board, width: stock.width ?? 0 })
    : message("drawing.title.cut-sheet", { stock: stock.id, number: bar.index + 1 });
  const line = (from: number, to: number, text: Extract<Item, { kind: "text" }>["text"]): Item => ({
    kind: "text",
    layer: words,
    at: [(from + to) / 2, middle],
    text,
    height: TEXT,
    anchor: "middle",
    baseline: "middle",
    fitWidth: to - from - (2 * INSET) / scale,
  });
  return [
    { kind: "polygon", layer: wood, outline: box(0, stock.length), line: "detail", fill: "paper" },
    ...unsound(stock).map(
      ([from, to]): Item => ({
        kind: "hatch",
        layer: layerName("BATTEN", "H"),
        outline: box(from, to),
        pattern: "diagonal",
        spacing: 1.2,
      }),
    ),
    ...bar.pieces.flatMap(({ demandId, from, to }): Item[] => [
      { kind: "polygon", layer: wood, of: demandId, outline: box(from, to), line: "detail", fill },
      {
        ...line(from, to, message("drawing.cut-piece", { mark: demandId, length: to - from })),
        of: demandId,
        ...(fill === "board" && { ink: "on-board" as const }),
      } as Item,
    ]),
    ...bar.rests.map(({ from, to }) => line(from, to, message("drawing.cut-rest", { length: to - from }))),
    {
      kind: "text",
      layer: words,
      at: [-BESIDE / scale, middle],
      text: name,
      height: TEXT,
      anchor: "end",
      baseline: "middle",
    },
  ];
}

/** What lies between the sound runs of a length. */
function unsound({ sound, length }: LengthStock): [number, number][] {
  const ends = [0, ...sound.flatMap(({ from, to }) => [from, to]), length];
  const spans: [number, number][] = [];
  for (let i = 0; i < ends.length; i += 2) {
    const [from = 0, to = 0] = [ends[i], ends[i + 1]];
    if (to > from) spans.push([from, to]);
  }
  return spans;
}
