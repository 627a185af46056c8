/** The strips that a round duct leaves of a board over and under it: narrower than the sliver's floor, they split at the next screw. */
import type { Interval } from "../../geometry/interval.ts";
import { fromGridSteps, snap } from "../../units/length.ts";
import type { CountChoice } from "./counts.ts";
import type { GridRod, GridSegment } from "./grid-rod.ts";
import { latticeOf } from "./lattice.ts";
import { edgeAt } from "./meetings.ts";

/** Lengths nearer than this are one (mm). */
const NOISE_MM = 0.001;

export interface DuctStrip {
  /** Of the board beside the duct (mm). */
  readonly left: number;
  /** What must be left of it (mm). */
  readonly least: number;
}

/**
 * The slivers that a duct leaves of a board, none, one or two. Millimetres.
 * @param course the board's two long edges; `width` is of the board as sawn, a mitre's long point included
 */
export function sliversBeside(
  [low, high]: Interval,
  [from, to]: Interval,
  { width, leastShare }: { readonly width: number; readonly leastShare: number },
): DuctStrip[] {
  if (high <= from + NOISE_MM || low >= to - NOISE_MM) return [];
  const least = snap(leastShare * width);
  return [low - from, to - high]
    .filter((left) => left > NOISE_MM && left < least - NOISE_MM)
    .map((left) => ({ left: snap(left), least }));
}

/** Whether a duct of which the rod must keep clear reaches into the segment. */
export function meetsDucts({ clearOf }: GridRod, segment: GridSegment): boolean {
  const [from, to] = [fromGridSteps(segment.from), fromGridSteps(segment.to)];
  return clearOf.spans.some((duct) => duct.from < to && duct.to > from);
}

/** By node of the choice's lattice and width (`node * widths + width`): 1 where the board would be left a sliver beside a duct. */
export function barredSteps(rod: GridRod, segment: GridSegment, choice: CountChoice): Uint8Array {
  const { size, onward, strides } = latticeOf(choice);
  const widths = rod.widths.length;
  const barred = new Uint8Array(size * widths);
  for (let node = 0; node < size; node += 1) {
    let timber = 0;
    let boards = 0;
    strides.forEach((stride, width) => {
      const used = Math.floor(node / stride) % ((choice.counts[width] ?? 0) + 1);
      boards += used;
      timber += used * (rod.widths[width] ?? 0);
    });
    const from = edgeAt(segment, choice, { timber, gaps: boards + (segment.gapAtStart ? 1 : 0) });
    for (let width = 0; width < widths; width += 1) {
      if ((onward[node * widths + width] ?? -1) < 0) continue;
      const wide = rod.widths[width] ?? 0;
      const course: Interval = [fromGridSteps(from), fromGridSteps(from + wide)];
      const by = { width: fromGridSteps(wide), leastShare: rod.clearOf.leastShare };
      if (rod.clearOf.spans.some((duct) => sliversBeside([duct.from, duct.to], course, by).length > 0))
        barred[node * widths + width] = 1;
    }
  }
  return barred;
}
