/** The saw list of lengths: what each bar gives from its left end, drawn and as a list. */
import type { CutPlan, LengthPart } from "../../../cutting/facade/plan.ts";
import type { CutBar, LengthStock } from "../../../cutting/model.ts";
import type { Scene } from "../../../scene/model.ts";
import { tableScenes } from "../../../scene/table.ts";
import { cutLengthsScene } from "../../../scene/views/cutting/cut-lengths.ts";
import { fittingScale } from "../../../scene/views/scales.ts";
import { type Message, message } from "../../../text/message.ts";
import { lengthCells } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

interface BarRow {
  readonly part: LengthPart;
  readonly bar: CutBar;
  readonly stock: LengthStock;
}

/** Bars that stand over one another on a sheet. */
const BARS_A_SHEET = 22;

export function cutLengthSheets(facts: KindFacts): Drawing[] {
  const { reader, room, memo } = facts;
  const scenes = partsOf(facts.plan).flatMap((part) => [
    ...memo.recall(sawList, { part, reader, room }),
    ...memo.recall(pictures, { part, room }),
  ]);
  return scenes.length === 0
    ? []
    : [{ name: "cut-lengths", type: message("drawing.document-type.saw-list"), scenes }];
}

function partsOf(plan: CutPlan | undefined): LengthPart[] {
  return plan
    ? [...plan.lengths, ...plan.boards.bought].filter(({ result }) => result.plan.bars.length > 0)
    : [];
}

function titleOf({ use, width, thickness }: LengthPart, key: string): Message {
  return message(key, { use: message(`schedule.use.${use}`), thickness, width });
}

function idOf({ use, width, thickness }: LengthPart): string {
  return `${use}-${thickness}-${width}`;
}

interface From extends Pick<KindFacts, "room"> {
  readonly part: LengthPart;
}

function sawList({ part, reader, room }: From & Pick<KindFacts, "reader">): Scene[] {
  const cells = lengthCells(reader);
  const stocks = new Map(part.request.stock.map((one) => [one.id, one]));
  const widths = new Map(part.request.demands.map(({ id, minWidth }) => [id, minWidth]));
  const rows = part.result.plan.bars.flatMap((bar): BarRow[] => {
    const stock = stocks.get(bar.stockId);
    return stock ? [{ part, bar, stock }] : [];
  });
  const piecesOf = ({ bar }: BarRow): Message => {
    const pieces = bar.pieces.map(({ demandId, from, to }) => {
      const width = widths.get(demandId) ?? part.width;
      const values = { mark: demandId, length: cells.cut(to - from) };
      return width < part.width
        ? message("drawing.saw.piece-ripped", { ...values, width: cells.rip(width) })
        : message("drawing.saw.piece", values);
    });
    const kept = bar.rests.map(({ from, to }) =>
      message("drawing.saw.keep", { length: cells.size(to - from) }),
    );
    return message("drawing.saw.pieces", { pieces: [...pieces, ...kept] });
  };
  return tableScenes({
    id: `saw-list-${idOf(part)}`,
    title: titleOf(part, "drawing.title.saw-list"),
    room,
    rows,
    columns: [
      {
        head: message("schedule.column.bar"),
        cell: ({ bar }) => `${bar.stockId} ${bar.index + 1}`,
        bold: true,
      },
      {
        head: message("schedule.column.bar-length"),
        cell: ({ stock }) => cells.size(stock.length),
        align: "end",
      },
      { head: message("drawing.column.from-left"), cell: piecesOf, wrap: 120 },
    ],
  });
}

function pictures({ part, room }: From): Scene[] {
  const { bars } = part.result.plan;
  const longest = Math.max(...part.request.stock.map(({ length }) => length));
  const scale = fittingScale({ x: [0, longest], y: [0, 1] }, { room: [room.width - 50, room.height] });
  const count = Math.ceil(bars.length / BARS_A_SHEET);
  return Array.from({ length: count }, (_, i) =>
    cutLengthsScene(bars.slice(i * BARS_A_SHEET, (i + 1) * BARS_A_SHEET), {
      id: `lengths-${idOf(part)}-${i + 1}`,
      title: titleOf(part, "drawing.title.lengths"),
      stock: part.request.stock,
      scale,
      fill: part.use === "boards" ? "board" : "batten",
    }),
  );
}
