import { endGaps, type GridRod, type GridSegment } from "./grid-rod.ts";

/** How many boards of each width lie in a segment, whatever its length. Grid steps. */
export interface CountVector {
  /** One count per width of the rod. */
  readonly counts: readonly number[];
  readonly boards: number;
  /** Sum of the widths. */
  readonly timber: number;
  /** Number of gaps: boards less one, and the gaps at the ends. */
  readonly gaps: number;
}

/** Counts chosen for a segment of known length, with the gap that follows from them. */
export interface CountChoice extends CountVector {
  /** What the gaps share, in grid steps: the length less the timber. */
  readonly spare: number;
  /** Grid steps, not rounded; NaN where there is no gap at all. */
  readonly gap: number;
  /** Distance of the gap from the preferred one, in grid steps; 0 where there is no gap. */
  readonly offset: number;
}

type Prefix = Omit<CountVector, "gaps">;

/** Every way to choose all regular widths but the last within `room`, the segment's ripped boards included. */
function forEachPrefix(
  rod: GridRod,
  segment: GridSegment,
  room: number,
  visit: (prefix: Prefix) => void,
): void {
  const counts = [...segment.ripped];
  let boards = 0;
  let timber = 0;
  segment.ripped.forEach((count, index) => {
    boards += count;
    timber += count * (rod.widths[index] ?? 0);
  });
  const choose = (index: number): void => {
    if (index >= rod.regularWidths - 1) {
      visit({ counts, boards, timber });
      return;
    }
    const width = rod.widths[index] ?? 0;
    const before = { boards, timber };
    for (let count = 0; timber <= room; count += 1) {
      counts[index] = count;
      choose(index + 1);
      boards += 1;
      timber += width;
    }
    counts[index] = 0;
    boards = before.boards;
    timber = before.timber;
  };
  choose(0);
}

/** The prefix with `count` boards of the last regular width, or nothing where that is no row of boards. */
function complete(
  rod: GridRod,
  segment: GridSegment,
  prefix: Prefix,
  count: number,
): CountVector | undefined {
  const boards = prefix.boards + count;
  if (count < 0 || boards < 1) return undefined;
  const last = rod.regularWidths - 1;
  return {
    counts: prefix.counts.with(last, count),
    boards,
    timber: prefix.timber + count * (rod.widths[last] ?? 0),
    gaps: boards - 1 + endGaps(segment),
  };
}

/**
 * The least and greatest count of the last regular width for which a length between `lengths` can be filled with gaps within
 * the band: least gaps at the greatest count, greatest gaps at the least.
 */
function lastCountRange(
  rod: GridRod,
  segment: GridSegment,
  prefix: Prefix,
  within: { readonly lengths: readonly [number, number]; readonly band: readonly [number, number] },
): { readonly least: number; readonly greatest: number } {
  const width = rod.widths[rod.regularWidths - 1] ?? 0;
  const gapsBefore = prefix.boards - 1 + endGaps(segment);
  const [shortest, longest] = within.lengths;
  const [min, max] = within.band;
  return {
    least: Math.ceil((shortest - prefix.timber - max * gapsBefore) / (width + max)),
    greatest: Math.floor((longest - prefix.timber - min * gapsBefore) / (width + min)),
  };
}

/** Every count vector that fills some length between `lengths` with gaps within `band`. All in grid steps. */
export function countVectors(
  rod: GridRod,
  segment: GridSegment,
  within: { readonly lengths: readonly [number, number]; readonly band: readonly [number, number] },
): CountVector[] {
  const found: CountVector[] = [];
  forEachPrefix(rod, segment, within.lengths[1], (prefix) => {
    const { least, greatest } = lastCountRange(rod, segment, prefix, within);
    for (let count = Math.max(0, least); count <= greatest; count += 1) {
      const vector = complete(rod, segment, prefix, count);
      if (vector !== undefined) found.push(vector);
    }
  });
  return found;
}

function choose(rod: GridRod, segment: GridSegment, vector: CountVector): CountChoice {
  const spare = segment.to - segment.from - vector.timber;
  const gap = vector.gaps === 0 ? Number.NaN : spare / vector.gaps;
  const { counts, boards, timber, gaps } = vector;
  return {
    counts,
    boards,
    timber,
    gaps,
    spare,
    gap,
    offset: gaps === 0 ? 0 : Math.abs(gap - rod.preferredGap),
  };
}

/** Every choice of counts whose gap lies within the band, narrowest gap first, those without any gap before all. */
export function countChoices(rod: GridRod, segment: GridSegment, band = rod.band): CountChoice[] {
  const length = segment.to - segment.from;
  const rank = (choice: CountChoice): number => (Number.isNaN(choice.gap) ? -1 : choice.gap);
  return countVectors(rod, segment, { lengths: [length, length], band })
    .map((vector) => choose(rod, segment, vector))
    .sort((one, other) => rank(one) - rank(other) || one.boards - other.boards);
}

/** Whether the counts alone leave an order in which no more than `maxTouching` boards of one width touch. */
export function countsCanKeepLook(vector: CountVector, maxTouching: number): boolean {
  return vector.counts.every((count) => count <= maxTouching * (vector.boards - count + 1));
}

/** The choices with the gaps nearest to the band from outside, on either side; none where no counts give one. */
export function nearestOutsideBand(
  rod: GridRod,
  segment: GridSegment,
): { readonly below: CountChoice | undefined; readonly above: CountChoice | undefined } {
  const length = segment.to - segment.from;
  let below: CountChoice | undefined;
  let above: CountChoice | undefined;
  forEachPrefix(rod, segment, length, (prefix) => {
    const { least, greatest } = lastCountRange(rod, segment, prefix, {
      lengths: [length, length],
      band: rod.band,
    });
    const tighter = complete(rod, segment, prefix, Math.max(0, greatest + 1));
    if (tighter !== undefined && tighter.gaps > 0 && tighter.timber <= length) {
      const choice = choose(rod, segment, tighter);
      if (below === undefined || choice.gap > below.gap) below = choice;
    }
    const looser = complete(rod, segment, prefix, least - 1);
    if (looser !== undefined && looser.gaps > 0) {
      const choice = choose(rod, segment, looser);
      if (above === undefined || choice.gap < above.gap) above = choice;
    }
  });
  return { below, above };
}
