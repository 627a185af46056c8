import { isFeasible } from "./feasible.ts";
import type { GridRod } from "./grid-rod.ts";
import { lineMoves } from "./move-line.ts";
import { severalLineMoves } from "./move-lines.ts";
import type { NearestChange } from "./outcome.ts";
import { rippedBoards } from "./rip-board.ts";
import { bandWidenings } from "./widen-band.ts";

/** The look rule is eased to this many equal widths at most; more would be no rule. */
const MOST_TOUCHING_EASED = 12;

/** For an impossible rod, the least change of each kind that makes it possible, each worked through and found to hold. */
export function nearestChanges(rod: GridRod): NearestChange[] {
  const single = lineMoves(rod);
  const moves = single.length > 0 ? single : severalLineMoves(rod);
  return [...moves, ...bandWidenings(rod), ...rippedBoards(rod), ...easedLook(rod)];
}

function easedLook(rod: GridRod): NearestChange[] {
  for (let most = rod.maxTouching + 1; most <= MOST_TOUCHING_EASED; most += 1) {
    if (isFeasible({ ...rod, maxTouching: most })) return [{ kind: "ease-look", maxEqualTouching: most }];
  }
  return [];
}
