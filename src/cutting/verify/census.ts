import type { Unplaced } from "../model.ts";
import type { CutProblem } from "./problem.ts";

export type CensusCode =
  | "unknown-stock"
  | "unknown-demand"
  | "piece-missing"
  | "piece-twice"
  | "over-count"
  | "index-repeated";

/** Every demand is in the plan once: placed, or listed as unplaced. */
export function checkPieces(census: {
  demands: readonly { readonly id: string }[];
  placed: readonly { readonly id: string; readonly where: string }[];
  unplaced: readonly Unplaced[];
}): CutProblem<CensusCode>[] {
  const problems: CutProblem<CensusCode>[] = [];
  const times = new Map(census.demands.map((demand) => [demand.id, 0]));
  const left = census.unplaced.map((one, index) => ({ id: one.demandId, where: `/unplaced/${index}` }));
  for (const { id, where } of [...census.placed, ...left]) {
    const before = times.get(id);
    if (before === undefined) problems.push({ code: "unknown-demand", where, parameters: { piece: id } });
    else if (before > 0) problems.push({ code: "piece-twice", where, parameters: { piece: id } });
    times.set(id, (before ?? 0) + 1);
  }
  for (const demand of census.demands) {
    if (times.get(demand.id) === 0) {
      problems.push({ code: "piece-missing", where: "", parameters: { piece: demand.id } });
    }
  }
  return problems;
}

/** Every sheet or bar is of known stock, none is used twice, and no stock is used oftener than there is of it. */
export function checkStock(census: {
  stock: readonly { readonly id: string; readonly count?: number }[];
  used: readonly { readonly stockId: string; readonly index: number }[];
  room: "sheets" | "bars";
}): CutProblem<CensusCode>[] {
  const problems: CutProblem<CensusCode>[] = [];
  const known = new Set(census.stock.map((one) => one.id));
  const seen = new Set<string>();
  census.used.forEach((one, place) => {
    const where = `/${census.room}/${place}`;
    const key = JSON.stringify([one.stockId, one.index]);
    if (!known.has(one.stockId)) {
      problems.push({ code: "unknown-stock", where, parameters: { stock: one.stockId } });
    }
    if (seen.has(key)) {
      problems.push({ code: "index-repeated", where, parameters: { stock: one.stockId, index: one.index } });
    }
    seen.add(key);
  });
  for (const stock of census.stock) {
    const used = census.used.filter((one) => one.stockId === stock.id).length;
    if (stock.count !== undefined && used > stock.count) {
      problems.push({
        code: "over-count",
        where: `/${census.room}`,
        parameters: { stock: stock.id, used, count: stock.count },
      });
    }
  }
  return problems;
}
