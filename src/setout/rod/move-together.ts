import { fromGridSteps } from "../../units/length.ts";
import { isFeasible, MOST_TRIALS } from "./feasible.ts";
import { type GridRod, toGridRod } from "./grid-rod.ts";
import { growths, type Interval } from "./move-line.ts";
import type { RodProblem } from "./problem.ts";

/**
 * The least move, in mm, of several lines by one and the same amount that makes a rod possible: an opening moved whole. Lines are numbered
 * upward from 0, the start of the first segment; segments must adjoin and the problem be free of faults. Nothing where no move up to a
 * board and a gap will do.
 */
export function leastMoveTogether(problem: RodProblem, lines: readonly number[]): number | undefined {
  const rod = toGridRod(problem);
  const reach = Math.max(...rod.widths) + rod.band[1];
  let allowed: Interval[] = [[-reach, reach]];
  rod.segments.forEach((segment, index) => {
    const direction = Number(lines.includes(index + 1)) - Number(lines.includes(index));
    if (direction === 0) return;
    const here = growths(rod, segment).map(
      ([least, most]): Interval => (direction > 0 ? [least, most] : [-most, -least]),
    );
    allowed = allowed.flatMap((one) =>
      here.flatMap((other): Interval[] => {
        const common: Interval = [Math.max(one[0], other[0]), Math.min(one[1], other[1])];
        return common[0] <= common[1] ? [common] : [];
      }),
    );
  });
  const moves = allowed.flatMap(([least, most]) => (least > 0 ? [least] : most < 0 ? [most] : []));
  const by = [...new Set(moves)]
    .sort((one, other) => Math.abs(one) - Math.abs(other) || one - other)
    .slice(0, MOST_TRIALS)
    .find((move) => isFeasible(shifted(rod, lines, move)));
  return by === undefined ? undefined : fromGridSteps(by);
}

function shifted(rod: GridRod, lines: readonly number[], by: number): GridRod {
  const segments = rod.segments.map((segment, index) => ({
    ...segment,
    from: segment.from + (lines.includes(index) ? by : 0),
    to: segment.to + (lines.includes(index + 1) ? by : 0),
  }));
  // A segment turned upside down holds no board, so such a move is never feasible.
  return { ...rod, segments: segments.map((one) => ({ ...one, to: Math.max(one.to, one.from) })) };
}
