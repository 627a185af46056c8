/** What pieces told as short on site mean for the saw: stock that is spoiled, and pieces to be cut again. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Spoiled } from "../../project/schema/spoiled.ts";
import type { SiteState } from "../journal/fold.ts";

export interface Shortages {
  /** For `cutting.spoiled`, as decision 18 has it: with the stock all that was planned on it is planned anew. */
  readonly spoiled: readonly Spoiled[];
  /** Marks to be cut singly: others of their stock are cut already and must not be cut twice, or no stock bears them. */
  readonly again: readonly string[];
}

/** @param plan what was sawn by, made before any of this was told */
export function shortagesOf(
  plan: CutPlan,
  { short, pieces }: Pick<SiteState, "short" | "pieces">,
): Shortages {
  const missing = new Set(short.map(({ place }) => place.piece));
  const left = new Set(missing);
  const spoiled: Spoiled[] = [];
  for (const { marks, stock } of stockOf(plan)) {
    const lost = marks.filter((mark) => left.has(mark));
    // Whoever has told of a piece has it: it is not sawn a second time.
    const isWhollyLost = marks.every((mark) => missing.has(mark) || pieces.stage(mark) === undefined);
    if (lost.length === 0 || !isWhollyLost) continue;
    spoiled.push(stock);
    for (const mark of lost) left.delete(mark);
  }
  return { spoiled, again: [...left].sort() };
}

/** Every sheet, bar and board that the plan saws, with the pieces on it. */
function stockOf(plan: CutPlan): { readonly marks: readonly string[]; readonly stock: Spoiled }[] {
  const named = (pieces: readonly { readonly demandId: string }[]) => pieces.map(({ demandId }) => demandId);
  const sheets = plan.sheets.flatMap(({ result }) =>
    result.plan.sheets.map(({ stockId, placements }) => {
      const marks = named(placements);
      return { marks, stock: { kind: "sheet", stock: stockId, pieces: marks } as const };
    }),
  );
  const bars = [...plan.boards.bought, ...plan.lengths].flatMap(({ stock, request, result }) =>
    result.plan.bars.flatMap(({ stockId, pieces }) => {
      const length = request.stock.find(({ id }) => id === stockId)?.length;
      const marks = named(pieces);
      return stock === undefined || length === undefined
        ? []
        : [{ marks, stock: { kind: "length", stock, length, pieces: marks } as const }];
    }),
  );
  const { lengths, strips } = plan.rips?.result ?? {};
  const boards = new Map<string, string[]>();
  for (const { stockId, pieces } of lengths?.plan.bars ?? []) {
    const board = strips?.find(({ id }) => id === stockId)?.board;
    if (board !== undefined) boards.set(board, [...(boards.get(board) ?? []), ...named(pieces)]);
  }
  const pile = [...boards].map(([board, marks]) => ({ marks, stock: { kind: "board", board } as const }));
  return [...sheets, ...bars, ...pile];
}
