/** A cut plan as the page lists it: what is sawn from one kind of stock, each part with its pictures. */
import type { CutPlan, LengthPart, PilePart, SheetPart } from "../../cutting/facade/plan.ts";
import { marksOf } from "../../cutting/facade/spoiled.ts";
import type { Spoiled } from "../../project/schema/spoiled.ts";
import type { Scene } from "../../scene/model.ts";
import { cutBoardScene } from "../../scene/views/cutting/cut-board.ts";
import { cutLengthsScene } from "../../scene/views/cutting/cut-lengths.ts";
import { cutSheetScene } from "../../scene/views/cutting/cut-sheet.ts";
import { type Message, message } from "../../text/message.ts";

/** A sheet, length or board as it may be told of as spoiled. */
export interface CutUnit {
  readonly name: Message | string;
  readonly spoiled: Spoiled;
}

/** One picture with the stock that is drawn on it. */
export interface CutPicture {
  readonly scene: Scene;
  readonly units: readonly CutUnit[];
}

export interface CutPartView {
  readonly key: string;
  readonly name: Message;
  /** Of stock that is sawn. */
  readonly count: number;
  /** How often the saw is set; absent for the pile, whose boards are ripped one by one. */
  readonly settings?: number;
  /** Marks of the pieces that it gives. */
  readonly marks: ReadonlySet<string>;
  readonly pictures: () => readonly CutPicture[];
}

/** Millimetres of paper for one of the stock. */
const SHEETS = 1 / 28;
const LENGTHS = 1 / 25;

export function cutParts(plan: CutPlan): CutPartView[] {
  return [
    ...plan.sheets.map(sheetView),
    ...(plan.rips ? [pileView(plan.rips)] : []),
    ...[...plan.boards.bought, ...plan.lengths].map(lengthView),
  ].filter(({ count }) => count > 0);
}

function sheetView(part: SheetPart): CutPartView {
  const { sheets } = part.result.plan;
  const stocked = new Map(part.request.stock.map((one) => [one.id, one]));
  return {
    key: `sheets ${part.material} ${part.thickness}`,
    name: message("schedule.cut.part.sheets", { thickness: part.thickness }),
    count: sheets.length,
    settings: part.settings,
    marks: new Set(sheets.flatMap(({ placements }) => placements.map(({ demandId }) => demandId))),
    pictures: () =>
      sheets.flatMap((sheet): CutPicture[] => {
        const stock = stocked.get(sheet.stockId);
        if (!stock) return [];
        const pieces = marksOf(sheet.placements);
        const unit: CutUnit = {
          name: nameOf(sheet),
          spoiled: { kind: "sheet", stock: sheet.stockId, pieces },
        };
        return [{ scene: cutSheetScene(sheet, { stock, scale: SHEETS }), units: [unit] }];
      }),
  };
}

function lengthView(part: LengthPart): CutPartView {
  const { use, width, thickness, request } = part;
  const { bars } = part.result.plan;
  const name = message(`schedule.cut.part.${use}`, { width, thickness });
  return {
    key: `${use} ${thickness} ${width} ${part.stock ?? ""}`,
    name,
    count: bars.length,
    settings: part.settings,
    marks: new Set(bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId))),
    pictures: () => [
      {
        scene: cutLengthsScene(bars, {
          id: `${use}-${thickness}-${width}`,
          title: name,
          stock: request.stock,
          scale: LENGTHS,
          fill: use === "boards" ? "board" : "batten",
        }),
        units: bars.flatMap((bar): CutUnit[] => {
          const length = request.stock.find(({ id }) => id === bar.stockId)?.length;
          if (length === undefined || part.stock === undefined) return [];
          const pieces = marksOf(bar.pieces);
          return [{ name: nameOf(bar), spoiled: { kind: "length", stock: part.stock, length, pieces } }];
        }),
      },
    ],
  };
}

function pileView({ request, result, ripped }: PilePart): CutPartView {
  const boards = new Map(request.boards.map((one) => [one.id, one]));
  const { bars } = result.lengths.plan;
  return {
    key: "pile",
    name: message("schedule.cut.part.pile"),
    count: ripped.length,
    marks: new Set(bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId))),
    pictures: () =>
      ripped.flatMap((one): CutPicture[] => {
        const board = boards.get(one.boardId);
        if (!board) return [];
        const unit: CutUnit = { name: board.id, spoiled: { kind: "board", board: board.id } };
        return [{ scene: cutBoardScene(one, { board, result, scale: LENGTHS }), units: [unit] }];
      }),
  };
}

/** As the pictures call it. */
function nameOf({ stockId, index }: { readonly stockId: string; readonly index: number }): Message {
  return message("drawing.title.cut-sheet", { stock: stockId, number: index + 1 });
}
