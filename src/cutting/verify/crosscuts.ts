/**
 * A bar or strip cut to length step by step from its left end, as its drawing numbers the pieces: what lies before a piece comes off,
 * then the piece. Crosscuts are not made against the rip fence (a piece between blade and fence binds). Shares no code with the solvers.
 */
import type { CutBar, LengthStock } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { atMost } from "./problem.ts";
import type { SawStep } from "./saw-reach.ts";

export type CrosscutCode = "part-not-in-hand" | "end-not-sawn";

/** A cut square across: where it stands and the stretch of the bar that lies on the saw, mm from the bar's left end. */
export interface Crosscut {
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The crosscuts that free a bar's pieces, and what keeps them from it.
 *
 * @param replay the blade's kerf and the trim at each end, its blade included, mm
 */
export function replayCrosscuts(replay: {
  readonly bar: CutBar;
  readonly stock: Pick<LengthStock, "length">;
  readonly kerf: number;
  readonly endTrim: number;
  readonly where: string;
}): { readonly problems: CutProblem<CrosscutCode>[]; readonly cuts: readonly Crosscut[] } {
  const { bar, stock, kerf, endTrim, where } = replay;
  const problems: CutProblem<CrosscutCode>[] = [];
  const cuts: Crosscut[] = [];
  const end = stock.length;
  let start = 0;
  const ordered = bar.pieces
    .map((piece, index) => ({ piece, index }))
    .sort((a, b) => a.piece.from - b.piece.from);
  for (const { piece, index } of ordered) {
    const report = (code: CrosscutCode) =>
      problems.push({ code, where: `${where}/pieces/${index}`, parameters: { piece: piece.demandId } });
    // What the blade before it took, or what is not on the bar, cannot be freed any more.
    if (!atMost(start, piece.from) || !atMost(piece.to, end)) {
      report("part-not-in-hand");
      continue;
    }
    if (!atMost(piece.from, start)) cuts.push({ at: piece.from, from: start, to: end });
    else if (atMost(piece.from, 0) && !atMost(endTrim, 0)) report("end-not-sawn");
    if (!atMost(end, piece.to)) cuts.push({ at: piece.to, from: piece.from, to: end });
    else if (!atMost(endTrim, 0)) report("end-not-sawn");
    start = piece.to + kerf;
  }
  return { problems, cuts };
}

/** @param section of the bar, mm, and what its wood weighs, kg a cubic metre */
export function crosscutSteps(
  cuts: readonly Crosscut[],
  {
    width,
    thickness,
    kgPerM3,
  }: { readonly width: number; readonly thickness: number; readonly kgPerM3: number },
): SawStep[] {
  return cuts.map(({ from, to }, index) => ({
    cut: index + 1,
    part: { width: to - from, height: width },
    kg: ((to - from) * width * thickness * kgPerM3) / MM3_PER_M3,
  }));
}

const MM3_PER_M3 = 1e9;
