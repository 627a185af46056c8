import { toGridSteps } from "../../units/length.ts";
import type { DuctSpan, RodProblem } from "./problem.ts";

/** A segment in whole grid steps. */
export interface GridSegment {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly gapAtStart: boolean;
  readonly gapAtEnd: boolean;
  /** Whether it begins where the segment before it ends, so that a run of equal widths goes on. */
  readonly adjoins: boolean;
  /** Boards of each width that must be there: zeros for the regular widths, one for the segment's ripped one. */
  readonly ripped: readonly number[];
}

export interface GridLine {
  readonly at: number;
  readonly edge: "end-of-board" | "start-of-board";
  readonly tolerance: number;
}

/** A rod in whole grid steps, in which fits and meetings are decided by integers, without tolerance. */
export interface GridRod {
  readonly segments: readonly GridSegment[];
  /** The regular widths, then the ripped ones. */
  readonly widths: readonly number[];
  readonly regularWidths: number;
  readonly band: readonly [min: number, max: number];
  /** Infinity for no rule. */
  readonly maxTouching: number;
  readonly lines: readonly GridLine[];
  readonly preferredGap: number;
  /** Ducts beside which no board may be laid that they leave a sliver of. Millimetres. */
  readonly clearOf: { readonly spans: readonly DuctSpan[]; readonly leastShare: number };
}

const NO_DUCTS: GridRod["clearOf"] = { spans: [], leastShare: 0 };

/** The rod on the grid, ducts left aside. The problem must be free of faults (`problemFaults`). */
export function toGridRod(problem: RodProblem): GridRod {
  const ripped = problem.ripped ?? [];
  const rippedWidths = [...new Set(ripped.map((board) => toGridSteps(board.width)))];
  const widths = [...problem.widths.map(toGridSteps), ...rippedWidths];
  const rippedIn = new Map(ripped.map((board) => [board.segment, toGridSteps(board.width)]));
  const band = [toGridSteps(problem.gapBand[0]), toGridSteps(problem.gapBand[1])] as const;
  let end = Number.NaN;
  const segments = problem.segments.map((segment) => {
    const from = toGridSteps(segment.from);
    const adjoins = from === end;
    end = toGridSteps(segment.to);
    const odd = rippedIn.get(segment.id);
    const rippedCounts = widths.map((width, index) =>
      index >= problem.widths.length && width === odd ? 1 : 0,
    );
    const { id, gapAtStart, gapAtEnd } = segment;
    return { id, from, to: end, gapAtStart, gapAtEnd, adjoins, ripped: rippedCounts };
  });
  return {
    segments,
    widths,
    regularWidths: problem.widths.length,
    band,
    maxTouching: problem.maxEqualTouching ?? Number.POSITIVE_INFINITY,
    lines: problem.secondaryLines.map((line) => ({
      at: toGridSteps(line.at),
      edge: line.edge,
      tolerance: toGridSteps(line.tolerance),
    })),
    preferredGap:
      problem.preferredGap === undefined ? (band[0] + band[1]) / 2 : toGridSteps(problem.preferredGap),
    clearOf: NO_DUCTS,
  };
}

/** Ends of the segment at which a gap lies inside it: 0, 1 or 2. */
export function endGaps(segment: GridSegment): number {
  return (segment.gapAtStart ? 1 : 0) + (segment.gapAtEnd ? 1 : 0);
}

/** The look rule as a limit: Infinity also where no row of boards is long enough to break it, so that a loose rule costs nothing. */
export function touchingLimit(rod: GridRod): number {
  const narrowest = Math.min(...rod.widths);
  const mostBoards = rod.segments.reduce((sum, { from, to }) => sum + Math.floor((to - from) / narrowest), 0);
  return rod.maxTouching < mostBoards ? rod.maxTouching : Number.POSITIVE_INFINITY;
}
