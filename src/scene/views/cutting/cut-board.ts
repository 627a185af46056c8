/** A board of the pile as it is ripped: what is wrong with it, the strips by their width, and the pieces along them. */
import type { PileBoard, RippedBoard } from "../../../cutting/model.ts";
import type { PileResult } from "../../../cutting/pile.ts";
import { rectOutline } from "../../../geometry/rect.ts";
import { message } from "../../../text/message.ts";
import { makeScene } from "../../bounds.ts";
import type { Item, Scene } from "../../model.ts";
import { layerName } from "../../roles.ts";
import { TEXT } from "../style.ts";

const WOOD = layerName("BOARD");
const WORDS = layerName("BOARD", "T");

/** Across a board more paper than along it, so that its strips can be read. */
const WIDER = 2;

export interface BoardOptions {
  readonly board: PileBoard;
  readonly result: PileResult;
  /** Millimetres of paper for one of the board's length. */
  readonly scale: number;
}

/** The board lies with its left edge up, its start at the left. */
export function cutBoardScene(ripped: RippedBoard, { board, result, scale }: BoardOptions): Scene {
  const { length, width, defects, wane } = board;
  const across = (from: number, to: number) => [-to * WIDER, -from * WIDER] as const;
  const box = (x: readonly [number, number], [from, to]: readonly [number, number]) =>
    rectOutline({ x, y: across(from, to) });
  const bars = new Map(result.lengths.plan.bars.map((bar) => [bar.stockId, bar]));
  const spoiled: Item[] = [
    ...defects.map(({ from, to }) => box([from, to], [0, width])),
    ...(wane ? [box([0, length], wane.edge === "left" ? [0, wane.width] : [width - wane.width, width])] : []),
  ].map((outline) => ({
    kind: "hatch",
    layer: layerName("BOARD", "H"),
    outline,
    pattern: "diagonal",
    spacing: 1.2,
  }));
  const strips = ripped.strips.flatMap(({ id, across: { from, to } }): Item[] => {
    const y = across(from, to);
    const middle = (y[0] + y[1]) / 2;
    return [
      { kind: "polygon", layer: WOOD, outline: rectOutline({ x: [0, length], y }), line: "detail" },
      {
        kind: "text",
        layer: WORDS,
        at: [length + 2 / scale, middle],
        text: message("drawing.cut-rip", { width: to - from }),
        height: TEXT,
        baseline: "middle",
      },
      ...(bars.get(id)?.pieces ?? []).flatMap((piece): Item[] => [
        {
          kind: "polygon",
          layer: WOOD,
          of: piece.demandId,
          outline: rectOutline({ x: [piece.from, piece.to], y }),
          line: "gap",
          fill: "board",
        },
        {
          kind: "text",
          layer: WORDS,
          of: piece.demandId,
          at: [(piece.from + piece.to) / 2, middle],
          text: message("drawing.cut-piece", { mark: piece.demandId, length: piece.to - piece.from }),
          height: TEXT,
          anchor: "middle",
          baseline: "middle",
          ink: "on-board",
          fitWidth: piece.to - piece.from - 1 / scale,
        },
      ]),
    ];
  });
  return makeScene({
    id: `board-${board.id}`,
    title: message("drawing.title.cut-board", {
      board: board.id,
      lot: board.lot,
      thickness: board.thickness,
      width,
      length,
    }),
    scale,
    items: [
      {
        kind: "polygon",
        layer: WOOD,
        outline: box([0, length], [0, width]),
        line: "visible",
        fill: "timber",
      },
      ...strips,
      ...spoiled,
    ],
  });
}
