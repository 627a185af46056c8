/** Stock that was planned on and is spoiled: what is left without it, and what of the former plan stands. */
import type { Project } from "../../project/schema/project.ts";
import type { Spoiled } from "../../project/schema/spoiled.ts";
import { type Message, message } from "../../text/message.ts";
import type { CutBar, CutSheet } from "../model.ts";
import type { PileSolver } from "./board-parts.ts";
import type { CutCounts, CutPlan, PilePart } from "./plan.ts";

/** Sheets of which there are only so many are fewer, and boards are out of the pile. What is bought as needed is bought again. */
export function withoutSpoiled(project: Project): Project {
  const { cutting, stock, pile } = project;
  const { spoiled = [], ...rest } = cutting ?? {};
  if (spoiled.length === 0) return project;
  const lost = (id: string): number =>
    spoiled.filter((one) => one.kind === "sheet" && one.stock === id).length;
  const rotten = new Set(spoiled.flatMap((one) => (one.kind === "board" ? [one.board] : [])));
  return {
    ...project,
    cutting: rest,
    stock: {
      ...stock,
      sheets: stock.sheets.map((sheet) =>
        sheet.count === undefined ? sheet : { ...sheet, count: Math.max(0, sheet.count - lost(sheet.id)) },
      ),
    },
    ...(pile && { pile: { ...pile, boards: pile.boards.filter(({ id }) => !rotten.has(id)) } }),
  };
}

/**
 * Sheets and bars of the former plan but for those that are spoiled. One is known by its stock and by the pieces that were planned
 * on it; each that is told of takes one away, and one that the plan does not have takes none.
 */
export function unspoiled(
  former: CutPlan,
  spoiled: readonly Spoiled[],
): { readonly sheets: readonly CutSheet[]; readonly bars: readonly CutBar[] } {
  const lost = spoiled.flatMap((one) => (one.kind === "board" ? [] : [nameOf(stockIdOf(one), one.pieces)]));
  const isLost = (name: string): boolean => {
    const at = lost.indexOf(name);
    if (at >= 0) lost.splice(at, 1);
    return at >= 0;
  };
  return {
    sheets: former.sheets
      .flatMap(({ result }) => result.plan.sheets)
      .filter(({ stockId, placements }) => !isLost(nameOf(stockId, marksOf(placements)))),
    bars: [...former.lengths, ...former.boards.bought]
      .flatMap(({ result }) => result.plan.bars)
      .filter(({ stockId, pieces }) => !isLost(nameOf(stockId, marksOf(pieces)))),
  };
}

/** The pile as it was cut before, where no board that it was ripped from is spoiled: what stays whole may rot without harm. */
export function resumedPile(solve: PileSolver, former: PilePart | undefined): PileSolver {
  return (request) => {
    const left = new Set(request.boards.map(({ id }) => id));
    const stands =
      former?.result.rips.boards.every(({ boardId }) => left.has(boardId)) &&
      JSON.stringify(former.request.wanted) === JSON.stringify(request.wanted);
    if (!former || !stands) return solve(request);
    const { ripRequest } = former.result;
    return { ...former.result, ripRequest: { ...ripRequest, boards: request.boards } };
  };
}

/** Bars in stock are named by their section and length. */
function stockIdOf(one: Exclude<Spoiled, { kind: "board" }>): string {
  return one.kind === "sheet" ? one.stock : `${one.stock} ${one.length}`;
}

function nameOf(stock: string, marks: readonly string[]): string {
  return JSON.stringify([stock, ...[...marks].sort()]);
}

export function marksOf(pieces: readonly { readonly demandId: string }[]): string[] {
  return pieces.map(({ demandId }) => demandId);
}

export function countsOf({ sheets, lengths, boards, rips, unplaced, cost }: CutPlan): CutCounts {
  const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);
  return {
    sheets: sum(sheets.map(({ result }) => result.plan.sheets.length)),
    lengths: sum([...lengths, ...boards.bought].map(({ result }) => result.plan.bars.length)),
    boards: rips?.ripped.length ?? 0,
    missing: unplaced.length + sum(boards.toFind.map(({ pieces }) => pieces.length)),
    cost,
  };
}

export function countsSaid({ cost, ...counts }: CutCounts, currency: string): Message {
  const amount = message("schedule.amount.money", { value: cost, currency });
  return message("schedule.cut.counts", { ...counts, cost: amount });
}
