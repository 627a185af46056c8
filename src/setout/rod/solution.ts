import { fromGridSteps, toGridSteps } from "../../units/length.ts";
import type { CountChoice } from "./counts.ts";
import type { GridRod, GridSegment } from "./grid-rod.ts";
import { edgeAt } from "./meetings.ts";
import type { BoardOrder } from "./order.ts";
import type {
  Course,
  MissedLine,
  RodMerit,
  RodSolution,
  RodSummary,
  SegmentSolution,
  WidthCount,
} from "./outcome.ts";
import type { RodProblem, SecondaryLine } from "./problem.ts";
import { runsTouching } from "./runs.ts";
import type { CountsFound } from "./search.ts";

/** The counts of a choice as a person reads them, widths none of which is used left out unless regular. */
export function widthCounts(rod: GridRod, choice: { readonly counts: readonly number[] }): WidthCount[] {
  return rod.widths.flatMap((width, index) => {
    const count = choice.counts[index] ?? 0;
    return count === 0 && index >= rod.regularWidths ? [] : [{ width: fromGridSteps(width), count }];
  });
}

/** A gap in grid steps as millimetres, as it is, off the grid where the boards leave a remainder. */
export function gapInMm(choice: CountChoice): number | undefined {
  return choice.gaps === 0 ? undefined : fromGridSteps(choice.gap);
}

export function meritOf(rod: GridRod, found: CountsFound): RodMerit {
  return {
    missedLines: rod.lines.length - found.linesMet,
    gapSpread: fromGridSteps(found.spread),
    gapOffset: fromGridSteps(found.offset),
    boards: found.boards,
  };
}

export function summarise(rod: GridRod, found: CountsFound): RodSummary {
  const segments = found.picks.map(({ choice }, index) => ({
    id: rod.segments[index]?.id ?? "",
    gap: gapInMm(choice),
    counts: widthCounts(rod, choice),
  }));
  return { merit: meritOf(rod, found), segments };
}

/** The boards in place. Edges are snapped as running totals, so that nothing adds up along the segment. */
function placeCourses(
  rod: GridRod,
  segment: GridSegment,
  choice: CountChoice,
  row: readonly number[],
): Course[] {
  let timber = 0;
  let gaps = segment.gapAtStart ? 1 : 0;
  return row.map((index) => {
    const width = rod.widths[index] ?? 0;
    const from = edgeAt(segment, choice, { timber, gaps });
    timber += width;
    gaps += 1;
    return { from: fromGridSteps(from), to: fromGridSteps(from + width), width: fromGridSteps(width) };
  });
}

export function buildSolution(
  problem: RodProblem,
  rod: GridRod,
  found: CountsFound,
  order: BoardOrder,
): RodSolution {
  const segments = rod.segments.flatMap((segment, index): SegmentSolution[] => {
    const choice = found.picks[index]?.choice;
    const row = order.segments[index];
    if (choice === undefined || row === undefined) return [];
    const courses = placeCourses(rod, segment, choice, row);
    return [{ id: segment.id, courses, gap: gapInMm(choice), counts: widthCounts(rod, choice) }];
  });
  const merit = meritOf(rod, found);
  return {
    segments,
    gapSpread: merit.gapSpread,
    missedLines: missedLines(
      problem.secondaryLines,
      segments.flatMap((segment) => segment.courses),
    ),
    merit,
    longestRun: longestRun(rod, segments),
    repeats: order.repeats,
  };
}

function longestRun(rod: GridRod, segments: readonly SegmentSolution[]): number {
  const rows: Course[][] = [];
  segments.forEach((segment, index) => {
    const row = rows.at(-1);
    if (row !== undefined && rod.segments[index]?.adjoins) row.push(...segment.courses);
    else rows.push([...segment.courses]);
  });
  return Math.max(...rows.flatMap((row) => runsTouching(row).map((run) => run.count)));
}

/** The lines that no course meets, by how far the nearest falls short. Worked in grid steps, in which differences are exact. */
export function missedLines(lines: readonly SecondaryLine[], courses: readonly Course[]): MissedLine[] {
  return lines.flatMap((line): MissedLine[] => {
    const byEnd = line.edge === "end-of-board";
    const at = toGridSteps(line.at);
    // The safe side is below the line for an end and above it for a start.
    const shortfalls = courses
      .map((course) => (byEnd ? at - toGridSteps(course.to) : toGridSteps(course.from) - at))
      .filter((steps) => steps >= 0);
    if (shortfalls.length === 0) return [{ id: line.id, nearest: undefined, offBy: undefined }];
    const least = Math.min(...shortfalls);
    if (least <= toGridSteps(line.tolerance)) return [];
    return [
      { id: line.id, nearest: fromGridSteps(byEnd ? at - least : at + least), offBy: fromGridSteps(least) },
    ];
  });
}
