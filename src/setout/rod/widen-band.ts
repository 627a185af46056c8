import { fromGridSteps } from "../../units/length.ts";
import { countChoices } from "./counts.ts";
import { isFeasible, MOST_TRIALS, unfilledSegments } from "./feasible.ts";
import type { GridRod } from "./grid-rod.ts";
import type { NearestChange } from "./outcome.ts";

/** Gaps are looked for up to this multiple of the band's greatest gap; wider ones are no gaps any more. */
const WIDEST_FACTOR = 2;

/** The least widening of the band downward and upward, each by itself, that makes the rod possible. Grid steps in, mm out. */
export function bandWidenings(rod: GridRod): NearestChange[] {
  const [min, max] = rod.band;
  const gapsWithin = (band: readonly [number, number], index: number): number[] => {
    const segment = rod.segments[index];
    return segment === undefined ? [] : countChoices(rod, segment, band).map((choice) => choice.gap);
  };
  const unfilled = unfilledSegments(rod);
  const all = rod.segments.map((_, index) => index);

  /** Ends of a wider band to try, nearest first, skipping those that leave a segment without any counts. */
  const trials = (
    band: readonly [number, number],
    toEnd: (gap: number) => number,
    from: number,
  ): number[] => {
    const distance = (end: number): number => Math.abs(end - from);
    const endsIn = (index: number): number[] =>
      gapsWithin(band, index)
        .filter((gap) => !Number.isNaN(gap))
        .map(toEnd);
    const needed = Math.max(0, ...unfilled.map((index) => Math.min(...endsIn(index).map(distance))));
    return [...new Set(all.flatMap(endsIn))]
      .filter((end) => end !== from && distance(end) >= needed)
      .sort((one, other) => distance(one) - distance(other))
      .slice(0, MOST_TRIALS);
  };
  const least = trials([0, min], Math.floor, min).find((end) => isFeasible({ ...rod, band: [end, max] }));
  const greatest = trials([max, max * WIDEST_FACTOR], Math.ceil, max).find((end) =>
    isFeasible({ ...rod, band: [min, end] }),
  );
  const change = (end: "least" | "greatest", band: readonly [number, number], by: number): NearestChange => ({
    kind: "widen-band",
    end,
    gapBand: [fromGridSteps(band[0]), fromGridSteps(band[1])],
    by: fromGridSteps(by),
  });
  return [
    ...(least === undefined ? [] : [change("least", [least, max], least - min)]),
    ...(greatest === undefined ? [] : [change("greatest", [min, greatest], greatest - max)]),
  ];
}
