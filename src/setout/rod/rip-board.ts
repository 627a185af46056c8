import { fromGridSteps, GRID_STEPS_PER_MM } from "../../units/length.ts";
import { countVectors } from "./counts.ts";
import { isFeasible, MOST_TRIALS, unfilledSegments } from "./feasible.ts";
import { endGaps, type GridRod } from "./grid-rod.ts";
import type { NearestChange } from "./outcome.ts";

/** A board narrower than this part of the narrowest regular one looks like a sliver (common practice). */
const NARROWEST_PART = 1 / 2;

/**
 * One board ripped to a width of its own in each segment that needs one: as near to a regular width as can be, no wider than the widest
 * regular board, no sliver, and in whole millimetres where the band leaves room for that. Nothing where segments have ripped boards already.
 */
export function rippedBoards(rod: GridRod): NearestChange[] {
  if (rod.widths.length > rod.regularWidths) return [];
  const unfilled = unfilledSegments(rod);
  const groups = unfilled.length > 0 ? [unfilled] : rod.segments.map((_, index) => [index]);
  let best: { readonly boards: readonly Rip[]; readonly distance: number } | undefined;
  for (const group of groups) {
    const found = nearestRips(rod, group);
    if (found === undefined) continue;
    const distance = found.reduce((sum, rip) => sum + rip.distance, 0);
    if (best === undefined || distance < best.distance) best = { boards: found, distance };
  }
  if (best === undefined) return [];
  const boards = best.boards.map(({ index, width }) => ({
    segment: rod.segments[index]?.id ?? "",
    width: fromGridSteps(width),
  }));
  return [{ kind: "rip", boards }];
}

interface Rip {
  readonly index: number;
  readonly width: number;
  /** To the nearest regular width. */
  readonly distance: number;
}

function nearestRips(rod: GridRod, group: readonly number[]): Rip[] | undefined {
  const options = group.map((index) => ripsFor(rod, index));
  if (options.some((list) => list.length === 0)) return undefined;
  const trials = Math.min(MOST_TRIALS, Math.max(...options.map((list) => list.length)));
  for (let trial = 0; trial < trials; trial += 1) {
    // Beyond its last candidate a segment keeps that one while the others go on.
    const rips = options.flatMap((list) => list[Math.min(trial, list.length - 1)] ?? []);
    if (isFeasible(withRips(rod, rips))) return rips;
  }
  return undefined;
}

function ripsFor(rod: GridRod, index: number): Rip[] {
  const segment = rod.segments[index];
  if (segment === undefined) return [];
  const length = segment.to - segment.from;
  const widest = Math.max(...rod.widths);
  const narrowest = Math.ceil(Math.min(...rod.widths) * NARROWEST_PART);
  const [min, max] = rod.band;
  const ranges: (readonly [number, number])[] = [];
  const addRange = (timber: number, boards: number): void => {
    const gaps = boards + endGaps(segment);
    const least = Math.max(narrowest, length - timber - gaps * max);
    const greatest = Math.min(widest - 1, length - timber - gaps * min);
    if (least <= greatest) ranges.push([least, greatest]);
  };
  addRange(0, 0);
  // The rest of the segment, with the gap that parts it from the ripped board: the ends' gaps count there already.
  const rest = [Math.max(1, length - widest - max), Math.max(1, length - narrowest)] as const;
  for (const vector of countVectors(rod, segment, { lengths: rest, band: rod.band }))
    addRange(vector.timber, vector.boards);
  const rips = ranges.flatMap(([least, greatest]) => nearestWidths(rod, index, { least, greatest }));
  const seen = new Set<number>();
  return rips
    .sort((one, other) => one.distance - other.distance || other.width - one.width)
    .filter(({ width }) => !seen.has(width) && seen.add(width));
}

/** In a range of widths, for each regular width the nearest whole millimetre other than itself, or the nearest grid step where there is none. */
function nearestWidths(
  rod: GridRod,
  index: number,
  range: { readonly least: number; readonly greatest: number },
): Rip[] {
  const mm = GRID_STEPS_PER_MM;
  return rod.widths.flatMap((regular): Rip[] => {
    const within = Math.min(range.greatest, Math.max(range.least, regular));
    const whole = [Math.floor(within / mm) * mm, Math.ceil(within / mm) * mm, regular - mm, regular + mm];
    const distance = (width: number): number =>
      Math.min(...rod.widths.map((other) => Math.abs(width - other)));
    const usable = (width: number): boolean =>
      width >= range.least && width <= range.greatest && distance(width) > 0;
    const candidates = whole.filter(usable);
    const chosen = (candidates.length > 0 ? candidates : [within].filter(usable)).map((width) => ({
      index,
      width,
      distance: distance(width),
    }));
    return chosen.sort((one, other) => one.distance - other.distance).slice(0, 1);
  });
}

function withRips(rod: GridRod, rips: readonly Rip[]): GridRod {
  const odd = [...new Set(rips.map((rip) => rip.width))];
  const segments = rod.segments.map((segment, index) => {
    const width = rips.find((rip) => rip.index === index)?.width;
    return {
      ...segment,
      ripped: [...rod.widths.map(() => 0), ...odd.map((other) => (other === width ? 1 : 0))],
    };
  });
  return { ...rod, segments, widths: [...rod.widths, ...odd] };
}
