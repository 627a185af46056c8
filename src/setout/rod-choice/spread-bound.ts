import { endGaps, type GridRod } from "../rod/grid-rod.ts";

export interface SpreadBound {
  /** The least spread of gaps between the segments that can be filled, in grid steps. */
  readonly spread: number;
  /** Segments that no counts fill. */
  readonly unfilled: number;
}

/**
 * For sets of one or two widths, the least spread of gaps that counts of boards allow: no rod of the set, in whatever order and with
 * whatever lines met, is more even.
 *
 * Keeps its lists between calls, for it is asked thousands of times.
 */
export function spreadBound(rod: GridRod): (widths: readonly number[]) => SpreadBound {
  const [min, max] = rod.band;
  const segments = rod.segments.map((segment) => ({
    length: segment.to - segment.from,
    ends: endGaps(segment),
    gaps: [] as number[],
    /** One board alone fills it: it has no gap, and holds the others to nothing. */
    isFree: false,
  }));
  const most = rod.maxTouching;

  /** Fills the list of gaps; false where the segment cannot be filled. */
  const fill = (segment: (typeof segments)[number], [narrow = 0, wide]: readonly number[]): boolean => {
    const { length, ends, gaps } = segment;
    gaps.length = 0;
    segment.isFree = false;
    const add = (first: number, second: number): void => {
      const boards = first + second;
      if (boards < 1 || first > most * (second + 1) || second > most * (first + 1)) return;
      const between = boards - 1 + ends;
      const spare = length - first * narrow - second * (wide ?? 0);
      if (between > 0) gaps.push(spare / between);
      else if (spare === 0) segment.isFree = true;
    };
    for (let first = 0; first * narrow <= length; first += 1) {
      const gapsBefore = first - 1 + ends;
      const spare = length - first * narrow;
      if (wide === undefined) {
        if (spare >= min * gapsBefore && spare <= max * gapsBefore) add(first, 0);
        continue;
      }
      const least = Math.max(0, Math.ceil((spare - max * gapsBefore) / (wide + max)));
      const greatest = Math.floor((spare - min * gapsBefore) / (wide + min));
      for (let second = least; second <= greatest; second += 1) add(first, second);
    }
    return gaps.length > 0 || segment.isFree;
  };

  return (widths) => {
    const filled = segments.filter((segment) => fill(segment, widths));
    const lists = filled.flatMap(({ gaps, isFree }) => (isFree ? [] : [inOrder(gaps)]));
    return { spread: narrowestRange(lists), unfilled: segments.length - filled.length };
  };
}

/** Sorts in place; the lists are short and nearly in order, where this is quicker than a general sort. */
function inOrder(numbers: number[]): number[] {
  for (let next = 1; next < numbers.length; next += 1) {
    const one = numbers[next] ?? 0;
    let place = next;
    while (place > 0 && (numbers[place - 1] ?? 0) > one) {
      numbers[place] = numbers[place - 1] ?? 0;
      place -= 1;
    }
    numbers[place] = one;
  }
  return numbers;
}

/** The least distance between the lowest and the highest of numbers taken one from each sorted list. */
export function narrowestRange(lists: readonly (readonly number[])[]): number {
  if (lists.length < 2) return 0;
  const heads = lists.map(() => 0);
  let least = Number.POSITIVE_INFINITY;
  for (;;) {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    let lagging = 0;
    for (let index = 0; index < lists.length; index += 1) {
      const head = lists[index]?.[heads[index] ?? 0];
      if (head === undefined) return least;
      if (head < lowest) {
        lowest = head;
        lagging = index;
      }
      if (head > highest) highest = head;
    }
    least = Math.min(least, highest - lowest);
    heads[lagging] = (heads[lagging] ?? 0) + 1;
  }
}
