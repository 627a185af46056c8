/** What is left of each lot once its pieces are cut, to mend with later: no other lot has its colour. */
import type { PilePart } from "./plan.ts";

/** Common practice: 2 to 5 % of a lot is set aside for repairs. */
export const SPARE_SHARE = { least: 0.02, usual: 0.05 } as const;
const MM2_PER_M2 = 1e6;

/** Areas in m². */
export interface LotSpare {
  readonly lot: string;
  readonly cutM2: number;
  /** Rests of its strips that are long enough to keep. */
  readonly restsM2: number;
  /** Boards that stay whole. */
  readonly wholeM2: number;
  /** Rests and whole boards over what is cut. */
  readonly share: number;
}

/** Lots that pieces are cut from, in the order of their names. */
export function lotSpares({ request, result }: PilePart): LotSpare[] {
  const strips = new Map(result.strips.map((strip) => [strip.id, strip]));
  const ripped = new Set(result.rips.boards.map(({ boardId }) => boardId));
  const sums = new Map<string, { cut: number; rests: number; whole: number }>();
  const of = (lot: string) => {
    const sum = sums.get(lot) ?? { cut: 0, rests: 0, whole: 0 };
    sums.set(lot, sum);
    return sum;
  };
  for (const { stockId, pieces, rests } of result.lengths.plan.bars) {
    const { lot = "", width = 0 } = strips.get(stockId) ?? {};
    for (const { from, to } of pieces) of(lot).cut += (to - from) * width;
    for (const { from, to } of rests) of(lot).rests += (to - from) * width;
  }
  for (const { id, lot, length, width } of request.boards) {
    if (!ripped.has(id)) of(lot).whole += length * width;
  }
  return [...sums]
    .filter(([, { cut }]) => cut > 0)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([lot, { cut, rests, whole }]) => ({
      lot,
      cutM2: cut / MM2_PER_M2,
      restsM2: rests / MM2_PER_M2,
      wholeM2: whole / MM2_PER_M2,
      share: (rests + whole) / cut,
    }));
}
