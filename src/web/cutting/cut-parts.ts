/** A cut plan as the page lists it: what is sawn from one kind of stock, each part with its pictures. */
import type { CutPlan, LengthPart, PilePart, SheetPart } from "../../cutting/facade/plan.ts";
import type { Scene } from "../../scene/model.ts";
import { cutBoardScene } from "../../scene/views/cutting/cut-board.ts";
import { cutLengthsScene } from "../../scene/views/cutting/cut-lengths.ts";
import { cutSheetScene } from "../../scene/views/cutting/cut-sheet.ts";
import { type Message, message } from "../../text/message.ts";

export interface CutPartView {
  readonly key: string;
  readonly name: Message;
  /** Of stock that is sawn. */
  readonly count: number;
  /** Marks of the pieces that it gives. */
  readonly marks: ReadonlySet<string>;
  readonly scenes: () => readonly Scene[];
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
    marks: new Set(sheets.flatMap(({ placements }) => placements.map(({ demandId }) => demandId))),
    scenes: () =>
      sheets.flatMap((sheet) => {
        const stock = stocked.get(sheet.stockId);
        return stock ? [cutSheetScene(sheet, { stock, scale: SHEETS })] : [];
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
    marks: new Set(bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId))),
    scenes: () => [
      cutLengthsScene(bars, {
        id: `${use}-${thickness}-${width}`,
        title: name,
        stock: request.stock,
        scale: LENGTHS,
        fill: use === "boards" ? "board" : "batten",
      }),
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
    scenes: () =>
      ripped.flatMap((one) => {
        const board = boards.get(one.boardId);
        return board ? [cutBoardScene(one, { board, result, scale: LENGTHS })] : [];
      }),
  };
}
