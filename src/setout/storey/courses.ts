/** A rod as the facade keeps it: numbered courses between lines, and one for showing where there is none. */
import { snap } from "../../units/length.ts";
import type { RodCourse, RodSegmentResult } from "../facade.ts";
import type { RodProblem, SegmentSolution } from "../rod/index.ts";

const COURSES_PER_SEGMENT = 100;

/** Segment solutions as courses, numbered 101, 102 … in the first segment, 201 … in the second. */
export function placedSegments(
  problem: RodProblem,
  segments: readonly SegmentSolution[],
): RodSegmentResult[] {
  return segments.map((solution, i): RodSegmentResult => {
    const segment = problem.segments[i];
    return {
      segment: solution.id,
      from: segment?.from ?? 0,
      to: segment?.to ?? 0,
      endGaps: { start: segment?.gapAtStart ?? false, end: segment?.gapAtEnd ?? false },
      gap: solution.gap ?? 0,
      courses: solution.courses.map(
        ({ from, to, width }, k): RodCourse => ({
          number: (i + 1) * COURSES_PER_SEGMENT + k + 1,
          from,
          to,
          width,
        }),
      ),
    };
  });
}

/**
 * A rod for showing when none is possible: each segment alone takes the widest board as often as it goes, at the gap
 * nearest to the band.
 */
export function fallbackRod(problem: RodProblem): SegmentSolution[] {
  const [least, most] = problem.gapBand;
  const width = Math.max(...problem.widths);
  return problem.segments.map((segment): SegmentSolution => {
    const length = segment.to - segment.from;
    const ends = (segment.gapAtStart ? 1 : 0) + (segment.gapAtEnd ? 1 : 0);
    const middle = (least + most) / 2;
    const boards = Math.max(1, Math.round((length + middle * (1 - ends)) / (width + middle)));
    const gaps = boards - 1 + ends;
    // One board that overfills its segment is ripped to it.
    const used = gaps === 0 || length < boards * width ? (length - gaps * least) / boards : width;
    const gap = gaps === 0 ? 0 : (length - boards * used) / gaps;
    const first = segment.from + (segment.gapAtStart ? gap : 0);
    const courses = Array.from({ length: boards }, (_, i) => {
      const from = snap(first + i * (used + gap));
      const to = i === boards - 1 && !segment.gapAtEnd ? segment.to : snap(first + i * (used + gap) + used);
      return { from, to, width: snap(to - from) };
    });
    return { id: segment.id, courses, gap, counts: [{ width: used, count: boards }] };
  });
}
