import { lengthPlanCost } from "./cost.ts";
import { cutLengths } from "./lengths.ts";
import type {
  CutResult,
  LengthDemand,
  LengthPlan,
  LengthStock,
  PileBoard,
  RipPlan,
  RipRequest,
} from "./model.ts";
import { ripBoards, stripStock } from "./rips.ts";

/** The pieces wanted of one strip width. */
export interface PilePieces {
  readonly section: string;
  readonly width: number;
  readonly minThickness?: number;
  readonly lots?: readonly string[];
  readonly pieces: readonly { readonly id: string; readonly length: number }[];
}

export interface PileRequest {
  readonly boards: readonly PileBoard[];
  readonly wanted: readonly PilePieces[];
  readonly kerf: number;
  readonly straighten?: number;
  readonly endTrim?: number;
  readonly defectMargin?: number;
  readonly keepRestFrom?: number;
  readonly budget?: number;
  readonly seed?: number;
}

export interface PileResult {
  /** The request that the rip plan answers, to check it against. */
  readonly ripRequest: RipRequest;
  readonly rips: RipPlan;
  /** The strips, as the stock that the lengths are cut from. */
  readonly strips: readonly LengthStock[];
  readonly demands: readonly LengthDemand[];
  readonly lengths: CutResult<LengthPlan>;
}

/** Extra sound length asked of the pile, round by round, while pieces that it could give find no place. */
const allowances = [1.02, 1.08, 1.16, 1.3, 1.5, 2];

/**
 * From the pile to the pieces: rips strips for the lengths wanted, cuts them, and where pieces are left over asks the
 * pile for more of those widths, until all have a place or the pile has no more to give. Of the rounds, the one that
 * leaves out least and then uses least wood is cut once more with the whole search.
 */
export function cutPile(request: PileRequest): PileResult {
  const ask = request.wanted.map(() => 0);
  const rough = { ...request, budget: 0 };
  let best = cutOnce(rough, ask);
  let last = best;
  let kept = [...ask];
  while (askForMore(ask, last, request)) {
    last = cutOnce(rough, ask);
    if (!isBetter(last, best)) continue;
    best = last;
    kept = [...ask];
  }
  return cutOnce(request, kept);
}

/** Raises the allowance of each width that has pieces left over though the pile met what was asked; false: none. */
function askForMore(ask: number[], last: PileResult, request: PileRequest): boolean {
  const missing = new Set(last.lengths.plan.unplaced.map((one) => one.demandId));
  let more = false;
  request.wanted.forEach((want, index) => {
    const level = ask[index] ?? 0;
    const met = last.rips.supply[index]?.short === 0;
    if (!met || level + 1 >= allowances.length || !want.pieces.some((piece) => missing.has(piece.id))) return;
    ask[index] = level + 1;
    more = true;
  });
  return more;
}

function cutOnce(request: PileRequest, ask: readonly number[]): PileResult {
  const { boards, wanted, kerf } = request;
  const ripRequest: RipRequest = {
    boards,
    kerf,
    ...(request.straighten === undefined ? {} : { straighten: request.straighten }),
    widths: wanted.map((want, index) => {
      const lengths = want.pieces.map((piece) => piece.length);
      return {
        section: want.section,
        width: want.width,
        ...(want.minThickness === undefined ? {} : { minThickness: want.minThickness }),
        ...(want.lots === undefined ? {} : { lots: want.lots }),
        totalLength:
          lengths.reduce((sum, length) => sum + length + kerf, 0) * (allowances[ask[index] ?? 0] ?? 1),
        shortest: lengths.reduce((least, length) => Math.min(least, length), Number.POSITIVE_INFINITY),
      };
    }),
  };
  const rips = ripBoards(ripRequest);
  const strips = stripStock(rips, ripRequest);
  const demands = wanted.flatMap((want) =>
    want.pieces.map((piece) => ({
      id: piece.id,
      length: piece.length,
      section: want.section,
      minWidth: want.width,
      ...(want.minThickness === undefined ? {} : { minThickness: want.minThickness }),
      ...(want.lots === undefined ? {} : { lots: want.lots }),
    })),
  );
  const { endTrim, defectMargin, keepRestFrom, budget, seed } = request;
  const lengths = cutLengths({
    stock: strips,
    demands,
    kerf,
    ...(endTrim === undefined ? {} : { endTrim }),
    ...(defectMargin === undefined ? {} : { defectMargin }),
    ...(keepRestFrom === undefined ? {} : { keepRestFrom }),
    ...(budget === undefined ? {} : { budget }),
    ...(seed === undefined ? {} : { seed }),
  });
  return { ripRequest, rips, strips, demands, lengths };
}

function isBetter(a: PileResult, b: PileResult): boolean {
  const left = missingLength(a) - missingLength(b);
  if (left !== 0) return left < 0;
  return lengthPlanCost(a.lengths.plan, a.strips) < lengthPlanCost(b.lengths.plan, b.strips);
}

function missingLength(result: PileResult): number {
  const missing = new Set(result.lengths.plan.unplaced.map((one) => one.demandId));
  return result.demands.reduce((sum, demand) => sum + (missing.has(demand.id) ? demand.length : 0), 0);
}
