/** What the saw does, as CSV: sheets with their pieces and offcuts, lengths with their pieces and rests, boards with their strips. */
import type { CutPlan, LengthPart, PilePart } from "../../cutting/facade/plan.ts";
import type { Rectangle, Span } from "../../cutting/model.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type CsvFile, column, csvFile, lengthColumns } from "./table.ts";

interface SheetRow extends Rectangle {
  readonly sheet: number;
  readonly stock: string;
  readonly stockWidth: number;
  readonly stockHeight: number;
  readonly what: "piece" | "offcut";
  readonly mark?: string;
  readonly turned?: boolean;
}

export function sheetListCsv(plan: CutPlan | undefined, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<SheetRow>("cut-list-sheets.csv", {
    reader,
    rows: sheetRows(plan),
    columns: [
      column("sheet", ({ sheet }) => sheet),
      column("stock", ({ stock }) => stock),
      length("sheet-width", "size", ({ stockWidth }) => stockWidth),
      length("sheet-height", "size", ({ stockHeight }) => stockHeight),
      column("what", ({ what }) => say(message(`schedule.${what}`), reader)),
      column("piece", ({ mark }) => mark),
      length("from-left", "place", ({ x }) => x),
      length("from-bottom", "place", ({ y }) => y),
      length("width", "rip", ({ width }) => width),
      length("height", "cut", ({ height }) => height),
      column("turned", ({ turned }) =>
        turned === undefined ? undefined : say(message(`schedule.${turned ? "yes" : "no"}`), reader),
      ),
    ],
  });
}

/** Sheets are numbered through the whole building, so that a number names one sheet on the saw bench. */
function sheetRows(plan: CutPlan | undefined): SheetRow[] {
  const sheets = (plan?.sheets ?? []).flatMap(({ request, result }) =>
    result.plan.sheets.map((cut) => ({ cut, stock: request.stock.find(({ id }) => id === cut.stockId) })),
  );
  return sheets.flatMap(({ cut, stock }, index): SheetRow[] => {
    const sheet = {
      sheet: index + 1,
      stock: cut.stockId,
      stockWidth: stock?.width ?? 0,
      stockHeight: stock?.height ?? 0,
    };
    return [
      ...cut.placements.map(
        ({ demandId, turned, x, y, width, height }): SheetRow => ({
          ...sheet,
          what: "piece",
          mark: demandId,
          turned,
          x,
          y,
          width,
          height,
        }),
      ),
      ...cut.offcuts.map(
        ({ x, y, width, height }): SheetRow => ({
          ...sheet,
          what: "offcut",
          x,
          y,
          width,
          height,
        }),
      ),
    ];
  });
}

interface LengthRow extends Span {
  readonly length: number;
  readonly use: LengthPart["use"] | "pile";
  readonly stock: string;
  readonly barLength: number;
  readonly lot?: string;
  readonly what: "piece" | "rest";
  readonly mark?: string;
  /** Width that the piece is to have, where its bar is wider. */
  readonly ripTo?: number;
}

export function lengthListCsv(plan: CutPlan | undefined, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<LengthRow & { readonly bar: number }>("cut-list-lengths.csv", {
    reader,
    rows: lengthRows(plan),
    columns: [
      column("bar", ({ bar }) => bar),
      column("use", ({ use }) => say(message(`schedule.use.${use}`), reader)),
      column("stock", ({ stock }) => stock),
      column("lot", ({ lot }) => lot),
      length("bar-length", "size", ({ barLength }) => barLength),
      column("what", ({ what }) => say(message(`schedule.${what}`), reader)),
      column("piece", ({ mark }) => mark),
      length("from", "place", ({ from }) => from),
      length("to", "place", ({ to }) => to),
      length("length", "cut", (row) => row.length),
      length("rip-to", "rip", ({ ripTo }) => ripTo),
    ],
  });
}

function lengthRows(plan: CutPlan | undefined): (LengthRow & { readonly bar: number })[] {
  if (!plan) return [];
  const bars = [
    ...plan.lengths.flatMap(barsOf),
    ...(plan.rips ? stripBars(plan.rips) : []),
    ...plan.boards.bought.flatMap(barsOf),
  ];
  return bars.flatMap((rows, index) => rows.map((row) => ({ ...row, bar: index + 1 })));
}

function barsOf({ use, stock, width, request, result }: LengthPart): LengthRow[][] {
  const lengths = new Map(request.stock.map(({ id, length }) => [id, length]));
  const widths = new Map(request.demands.map(({ id, minWidth }) => [id, minWidth]));
  return result.plan.bars.map(({ stockId, pieces, rests }) => {
    const bar = { use, stock: stock ?? "", barLength: lengths.get(stockId) ?? 0 };
    return [
      ...pieces.map(({ demandId, from, to }): LengthRow => {
        const wanted = widths.get(demandId) ?? width;
        return {
          ...bar,
          what: "piece",
          mark: demandId,
          from,
          to,
          length: to - from,
          ...(wanted < width ? { ripTo: wanted } : {}),
        };
      }),
      ...rests.map((rest) => restRow(bar, rest)),
    ];
  });
}

function stripBars({ result }: PilePart): LengthRow[][] {
  const strips = new Map(result.strips.map((strip) => [strip.id, strip]));
  return result.lengths.plan.bars.map(({ stockId, pieces, rests }) => {
    const strip = strips.get(stockId);
    const bar = {
      use: "pile" as const,
      stock: stockId,
      barLength: strip?.length ?? 0,
      ...(strip?.lot === undefined ? {} : { lot: strip.lot }),
    };
    return [
      ...pieces.map(
        ({ demandId, from, to }): LengthRow => ({
          ...bar,
          what: "piece",
          mark: demandId,
          from,
          to,
          length: to - from,
        }),
      ),
      ...rests.map((rest) => restRow(bar, rest)),
    ];
  });
}

function restRow(bar: Pick<LengthRow, "use" | "stock" | "barLength" | "lot">, { from, to }: Span): LengthRow {
  return { ...bar, what: "rest", from, to, length: to - from };
}

interface RipRow {
  readonly board: string;
  readonly lot: string;
  readonly boardLength: number;
  readonly boardWidth: number;
  readonly boardThickness: number;
  readonly strip: string;
  readonly across: Span;
}

export function ripListCsv(plan: CutPlan | undefined, reader: Reader): CsvFile {
  const length = lengthColumns(reader);
  return csvFile<RipRow>("rip-list.csv", {
    reader,
    rows: ripRows(plan?.rips),
    columns: [
      column("board", ({ board }) => board),
      column("lot", ({ lot }) => lot),
      length("board-length", "size", ({ boardLength }) => boardLength),
      length("board-width", "size", ({ boardWidth }) => boardWidth),
      length("board-thickness", "size", ({ boardThickness }) => boardThickness),
      column("strip", ({ strip }) => strip),
      length("from-left-edge", "place", ({ across }) => across.from),
      length("to-left-edge", "place", ({ across }) => across.to),
      length("width", "rip", ({ across }) => across.to - across.from),
    ],
  });
}

function ripRows(rips: PilePart | undefined): RipRow[] {
  const boards = new Map(rips?.request.boards.map((board) => [board.id, board]));
  return (rips?.ripped ?? []).flatMap(({ boardId, strips }): RipRow[] => {
    const board = boards.get(boardId);
    if (!board) return [];
    return strips.map(({ id, across }) => ({
      board: boardId,
      lot: board.lot,
      boardLength: board.length,
      boardWidth: board.width,
      boardThickness: board.thickness,
      strip: id,
      across,
    }));
  });
}
