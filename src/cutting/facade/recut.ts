/**
 * The cut plan after real life: sheets that are cut or broke, boards that are rotten, pieces that are done. What is begun is
 * finished as it was planned; what is not begun keeps its place unless a better plan is found without it.
 */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { resumedLengths, resumedSheets } from "../resume.ts";
import { type CutOutcome, cutFacade, ownSolvers } from "./cut-facade.ts";
import type { CutPlan } from "./plan.ts";
import { withoutSpoiled } from "./spoiled.ts";

/** What has happened since the plan was made. Sheets go by their numbers in the cut list, from 1 through the whole building. */
export interface SinceThen {
  /** Marks of pieces that are cut and good. */
  readonly cut: readonly string[];
  readonly brokenSheets: readonly number[];
  /** Boards of the pile that cannot be used. */
  readonly spoiltBoards: readonly string[];
}

/** A sheet, bar or board that a piece is cut from already. */
export interface Begun {
  readonly stock: string;
  readonly done: readonly string[];
  /** Still to be cut from it, as planned. */
  readonly still: readonly string[];
}

export interface Recut {
  readonly outcome: CutOutcome;
  readonly begun: readonly Begun[];
}

/** What was named and is not there: marks, sheet numbers, boards. */
export interface Unknown {
  readonly cut: readonly string[];
  readonly brokenSheets: readonly number[];
  readonly spoiltBoards: readonly string[];
}

interface Unit {
  readonly stock: string;
  /** Id of the sheets that it is one of, where those are counted. */
  readonly sheet?: string;
  readonly board?: string;
  readonly marks: readonly string[];
  readonly broken: boolean;
}

/** @param former the plan that was worked from */
export function recut(
  project: Project,
  facade: Facade,
  { former, since }: { readonly former: CutPlan; readonly since: SinceThen },
): Recut {
  const done = new Set(since.cut);
  const spoilt = new Set(since.spoiltBoards);
  const units = unitsOf(former, since);
  const begun = units.flatMap((unit): Begun[] => {
    const own = unit.marks.filter((mark) => done.has(mark));
    if (own.length === 0) return [];
    // What broke or is rotten gives nothing more.
    const over = unit.broken || spoilt.has(unit.board ?? "");
    return [
      { stock: unit.stock, done: own, still: over ? [] : unit.marks.filter((mark) => !done.has(mark)) },
    ];
  });
  const settled = new Set(begun.flatMap((one) => [...one.done, ...one.still]));
  for (const mark of done) settled.add(mark);
  const isBegun = (unit: Unit): boolean => unit.marks.some((mark) => settled.has(mark));
  const gone = units.filter((unit) => unit.broken || isBegun(unit));
  const boardsGone = new Set([...spoilt, ...gone.flatMap(({ board }) => board ?? [])]);
  const whole = withoutSpoiled(project);
  const stock = whole.stock.sheets.map((sheet) => {
    const used = gone.filter((unit) => unit.sheet === sheet.id).length;
    return sheet.count === undefined ? sheet : { ...sheet, count: Math.max(0, sheet.count - used) };
  });
  const { pile } = whole;
  const left: Project = {
    ...whole,
    stock: { ...whole.stock, sheets: stock },
    ...(pile && { pile: { ...pile, boards: pile.boards.filter(({ id }) => !boardsGone.has(id)) } }),
  };
  const open: Facade = {
    ...facade,
    faces: facade.faces.map((face) => ({
      ...face,
      pieces: face.pieces.filter(({ mark }) => !settled.has(mark)),
    })),
  };
  const own = ownSolvers(project);
  const broken = new Set(since.brokenSheets);
  const sheets = former.sheets.flatMap(({ result }) => result.plan.sheets);
  const outcome = cutFacade(left, open, {
    sheets: resumedSheets(own.sheets, {
      sheets: sheets.filter((_, at) => !broken.has(at + 1)),
      unplaced: [],
    }),
    lengths: resumedLengths(own.lengths, {
      bars: [...former.lengths, ...former.boards.bought].flatMap(({ result }) => result.plan.bars),
      unplaced: [],
    }),
    pile: own.pile,
  });
  const { spoiled } = former;
  return {
    outcome: outcome.plan && spoiled ? { ...outcome, plan: { ...outcome.plan, spoiled } } : outcome,
    begun,
  };
}

/** What the former plan and the project do not know. */
export function unknownSince(
  project: Project,
  facade: Facade,
  { former, since }: { readonly former: CutPlan; readonly since: SinceThen },
): Unknown {
  const marks = new Set(facade.faces.flatMap(({ pieces }) => pieces.map(({ mark }) => mark)));
  const sheets = former.sheets.reduce((sum, { result }) => sum + result.plan.sheets.length, 0);
  const boards = new Set(project.pile?.boards.map(({ id }) => id));
  return {
    cut: since.cut.filter((mark) => !marks.has(mark)),
    brokenSheets: since.brokenSheets.filter((number) => number < 1 || number > sheets),
    spoiltBoards: since.spoiltBoards.filter((id) => !boards.has(id)),
  };
}

function unitsOf({ sheets, lengths, boards, rips }: CutPlan, { brokenSheets }: SinceThen): Unit[] {
  const broken = new Set(brokenSheets);
  const flat = sheets
    .flatMap(({ result }) => result.plan.sheets)
    .map(
      ({ stockId, placements }, at): Unit => ({
        stock: `${stockId} #${at + 1}`,
        sheet: stockId,
        marks: placements.map(({ demandId }) => demandId),
        broken: broken.has(at + 1),
      }),
    );
  const bars = [...lengths, ...boards.bought]
    .flatMap(({ result }) => result.plan.bars)
    .map(
      ({ stockId, index, pieces }): Unit => ({
        stock: `${stockId} #${index + 1}`,
        marks: pieces.map(({ demandId }) => demandId),
        broken: false,
      }),
    );
  const boardOf = new Map(rips?.result.strips.map(({ id, board }) => [id, board ?? ""]));
  const ripped = new Map<string, string[]>();
  for (const { stockId, pieces } of rips?.result.lengths.plan.bars ?? []) {
    const board = boardOf.get(stockId) ?? "";
    ripped.set(board, [...(ripped.get(board) ?? []), ...pieces.map(({ demandId }) => demandId)]);
  }
  const pile = [...ripped].map(([board, marks]): Unit => ({ stock: board, board, marks, broken: false }));
  return [...flat, ...bars, ...pile];
}
