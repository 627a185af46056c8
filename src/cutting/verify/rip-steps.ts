/**
 * A board of the pile ripped step by step, its good face up: its left edge is sawn straight along a guide, for a raw edge rides no
 * fence; then that edge runs along the fence and strip by strip comes off, each between fence and blade. Every strip keeps the good face
 * over its whole width. Shares no code with the solvers.
 */
import type { PileBoard, RippedBoard } from "../model.ts";
import type { CutProblem } from "./problem.ts";
import { atMost } from "./problem.ts";
import type { SawStep } from "./saw-reach.ts";

export type RipStepCode = "part-not-in-hand" | "edge-not-sawn" | "wane-kept";

/** A cut along the board: where it stands and what of the board's width lies on the saw, mm from its left edge. */
export interface RipCut {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** How far off the sawn edge the fence is set, mm; absent for the first edge. */
  readonly off?: number;
}

/**
 * The rips that free a board's strips, and what keeps them from it.
 *
 * @param replay the blade's kerf and what straightening takes off each edge, its blade included, mm
 */
export function replayRips(replay: {
  readonly ripped: RippedBoard;
  readonly board: Pick<PileBoard, "width" | "wane">;
  readonly kerf: number;
  readonly straighten: number;
  readonly where: string;
}): { readonly problems: CutProblem<RipStepCode>[]; readonly cuts: readonly RipCut[] } {
  const { ripped, board, kerf, straighten, where } = replay;
  const problems: CutProblem<RipStepCode>[] = [];
  const cuts: RipCut[] = [];
  const end = board.width;
  const sound = {
    from: board.wane?.edge === "left" ? board.wane.width : 0,
    to: end - (board.wane?.edge === "right" ? board.wane.width : 0),
  };
  let start = 0;
  const ordered = ripped.strips
    .map((strip, index) => ({ strip, index }))
    .sort((a, b) => a.strip.across.from - b.strip.across.from);
  for (const { strip, index } of ordered) {
    const { from, to } = strip.across;
    const report = (code: RipStepCode) =>
      problems.push({ code, where: `${where}/strips/${index}`, parameters: { strip: strip.id } });
    if (!atMost(start, from) || !atMost(to, end)) {
      report("part-not-in-hand");
      continue;
    }
    if (!atMost(sound.from, from) || !atMost(to, sound.to)) report("wane-kept");
    if (!atMost(from, start)) {
      // The first edge has no sawn edge before it to ride on.
      cuts.push({ at: from, from: start, to: end, ...(cuts.length > 0 && { off: from - kerf - start }) });
    } else if (atMost(from, 0) && !atMost(straighten, 0)) report("edge-not-sawn");
    if (!atMost(end, to)) cuts.push({ at: to, from, to: end, off: to - from });
    else if (!atMost(straighten, 0)) report("edge-not-sawn");
    start = to + kerf;
  }
  return { problems, cuts };
}

/** @param board the board as it lies in the pile, mm, and what its wood weighs, kg a cubic metre */
export function ripSteps(
  cuts: readonly RipCut[],
  {
    length,
    thickness,
    kgPerM3,
  }: { readonly length: number; readonly thickness: number; readonly kgPerM3: number },
): SawStep[] {
  return cuts.map(({ from, to, off }, index) => ({
    cut: index + 1,
    part: { width: length, height: to - from },
    ...(off !== undefined && { off }),
    kg: (length * (to - from) * thickness * kgPerM3) / MM3_PER_M3,
  }));
}

const MM3_PER_M3 = 1e9;
