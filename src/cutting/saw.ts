import { cutLengths } from "./lengths.ts";
import type {
  BoundMethod,
  CutNode,
  LengthRequest,
  Rectangle,
  SheetRequest,
  Span,
  Unplaced,
  UnplacedReason,
} from "./model.ts";
import type { SawItem, SawList, SawProblem, SawStock } from "./saw-list.ts";
import { readSawLists } from "./saw-list.ts";
import { cutSheets } from "./sheets.ts";
import { verifyLengthPlan } from "./verify/lengths.ts";
import type { CutProblem } from "./verify/problem.ts";
import { verifySheetPlan } from "./verify/sheets.ts";

export type { SawProblem } from "./saw-list.ts";

export interface SawOptions {
  /** May pieces be laid a quarter turn round? Of no meaning for lengths. */
  readonly turn: boolean;
  /** The saw turns at most this often, trimming included. */
  readonly stages?: number;
  /** Improving steps a list may take. */
  readonly budget?: number;
  readonly seed?: number;
}

interface SawResult {
  readonly id: string;
  /** Pieces left out, by their place in `items`. */
  readonly unplaced: readonly {
    readonly item: number;
    readonly count: number;
    readonly reason: UnplacedReason;
  }[];
  readonly cost: number;
  readonly bound: number;
  /** (cost - bound) / cost. */
  readonly gap: number;
  /** How the bound was reached. */
  readonly proof: BoundMethod;
  /** True where no plan costs less. */
  readonly proven: boolean;
  readonly iterations: number;
  readonly seed: number;
  /** What the independent check holds against the plan; none for a plan that can be sawn. */
  readonly problems: readonly CutProblem<string>[];
}

export interface SawnSheets extends SawResult {
  readonly kind: "2d";
  readonly sheets: readonly {
    /** Its place in the list's `sheets`. */
    readonly sheet: number;
    /** Its number among all sheets, row by row, where it has defects. */
    readonly number?: number;
    readonly placements: readonly (Rectangle & { readonly item: number; readonly turned: boolean })[];
    /** Pieces in the tree are named "item#number". */
    readonly tree: CutNode;
    readonly offcuts: readonly Rectangle[];
  }[];
}

export interface SawnBars extends SawResult {
  readonly kind: "1d";
  readonly bars: readonly {
    /** Its place in the list's `stock`. */
    readonly stock: number;
    /** Where it is a stretch of a board: the board's place in `boards`, and where the stretch starts on it. */
    readonly board?: { readonly board: number; readonly from: number };
    readonly pieces: readonly (Span & { readonly item: number })[];
    readonly rests: readonly Span[];
  }[];
}

export type SawAnswer = SawnSheets | SawnBars;

/**
 * Cuts plain lists of stock and demand, as read from JSON in the schema `cutting-bench-1`: one list, or the
 * `instances` of a collection, answered in order. A list with problems gets no answer, the others do.
 */
export function saw(
  document: unknown,
  options: SawOptions,
): { answers: SawAnswer[]; problems: SawProblem[] } {
  const { lists, problems } = readSawLists(document, options);
  const answers = lists.map((list) =>
    list.kind === "2d" ? sawSheets(list, options) : sawBars(list, options),
  );
  return { answers, problems };
}

function sawSheets(list: SawList, options: SawOptions): SawnSheets {
  const stages = options.stages ?? list.stages;
  const request: SheetRequest = {
    stock: list.stock.map((one, index) => ({
      id: String(index),
      width: one.width,
      height: one.height,
      cost: one.cost,
      ...(one.count === undefined ? {} : { count: one.count }),
      trim: list.trim,
      ...(one.defects === undefined ? {} : { defects: one.defects }),
    })),
    demands: pieces(list, (item, id) => ({
      id,
      width: item.width,
      height: item.height,
      mayTurn: options.turn,
    })),
    kerf: list.kerf,
    ...(stages === undefined ? {} : { stages }),
    ...(list.furthestFirstCuts === undefined ? {} : { furthestFirstCuts: list.furthestFirstCuts }),
    ...searchOptions(options),
  };
  const result = cutSheets(request);
  return {
    ...shared(list, result, verifySheetPlan({ request, plan: result.plan, claim: result })),
    kind: "2d",
    sheets: result.plan.sheets.map((sheet) => ({
      ...placeOf(list.stock[Number(sheet.stockId)]),
      placements: sheet.placements.map(({ demandId, ...box }) => ({ item: itemOf(demandId), ...box })),
      tree: sheet.tree,
      offcuts: sheet.offcuts,
    })),
  };
}

function sawBars(list: SawList, options: SawOptions): SawnBars {
  const request: LengthRequest = {
    stock: list.stock.map((one, index) => ({
      id: String(index),
      length: one.width,
      cost: one.cost,
      ...(one.count === undefined ? {} : { count: one.count }),
      section: "",
      sound: [{ from: 0, to: one.width }],
    })),
    demands: pieces(list, (item, id) => ({ id, length: item.width, section: "" })),
    kerf: list.kerf,
    endTrim: list.trim,
    ...searchOptions(options),
  };
  const result = cutLengths(request);
  return {
    ...shared(list, result, verifyLengthPlan({ request, plan: result.plan, claim: result })),
    kind: "1d",
    bars: result.plan.bars.map((bar) => ({
      ...barPlace(list.stock[Number(bar.stockId)]),
      pieces: bar.pieces.map(({ demandId, from, to }) => ({ item: itemOf(demandId), from, to })),
      rests: bar.rests,
    })),
  };
}

function placeOf(stock: SawStock | undefined): { sheet: number; number?: number } {
  const { row = 0, sheetNumber } = stock ?? {};
  return { sheet: row, ...(sheetNumber === undefined ? {} : { number: sheetNumber }) };
}

function barPlace(stock: SawStock | undefined): { stock: number; board?: { board: number; from: number } } {
  const { row = 0, board, from = 0 } = stock ?? {};
  return { stock: row, ...(board === undefined ? {} : { board: { board, from } }) };
}

function searchOptions(options: SawOptions): { budget?: number; seed?: number } {
  return {
    ...(options.budget === undefined ? {} : { budget: options.budget }),
    ...(options.seed === undefined ? {} : { seed: options.seed }),
  };
}

function pieces<Demand>(list: SawList, make: (item: SawItem, id: string) => Demand): Demand[] {
  return list.items.flatMap((item, index) =>
    Array.from({ length: item.quantity }, (_, number) => make(item, `${index}#${number + 1}`)),
  );
}

function itemOf(id: string): number {
  return Number(id.slice(0, id.indexOf("#")));
}

function shared(
  list: SawList,
  result: ReturnType<typeof cutSheets> | ReturnType<typeof cutLengths>,
  problems: readonly CutProblem<string>[],
): SawResult {
  const { cost, bound, iterations, seed } = result;
  return {
    id: list.id,
    unplaced: unplacedItems(result.plan.unplaced),
    cost,
    bound: bound.bound,
    gap: bound.gap,
    proof: bound.how,
    proven: bound.proven,
    iterations,
    seed,
    problems,
  };
}

function unplacedItems(unplaced: readonly Unplaced[]): SawResult["unplaced"] {
  const counts = new Map<string, { item: number; count: number; reason: UnplacedReason }>();
  for (const one of unplaced) {
    const item = itemOf(one.demandId);
    const key = `${item} ${one.reason}`;
    const before = counts.get(key);
    counts.set(key, { item, reason: one.reason, count: (before?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}
