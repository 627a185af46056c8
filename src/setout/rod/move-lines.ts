import { fromGridSteps } from "../../units/length.ts";
import { isFeasible, unfilledSegments } from "./feasible.ts";
import type { GridRod } from "./grid-rod.ts";
import { growths, type Interval } from "./move-line.ts";
import type { LineMove, NearestChange } from "./outcome.ts";

/** Most places tried for one line; beyond, the least moves are not looked for. */
const MOST_PLACES = 300;

/**
 * The least moves, by their sum, of several lines together, for rods that no single line can mend. Nothing where the order of boards
 * stands in the way as well, for then the least moves by counts are not enough and no others are proven least.
 */
export function severalLineMoves(rod: GridRod): NearestChange[] {
  const unfilled = new Set(unfilledSegments(rod));
  if (unfilled.size === 0) return [];
  const segments = rod.segments.map((segment) => ({ ...segment }));
  const moves: LineMove[] = [];
  for (const row of adjoiningRows(rod)) {
    if (!row.some((index) => unfilled.has(index))) continue;
    const offsets = leastOffsets(
      row.flatMap((index) => (rod.segments[index] === undefined ? [] : [growths(rod, rod.segments[index])])),
    );
    if (offsets === undefined) return [];
    offsets.forEach((by, place) => {
      const ended = segments[row[place - 1] ?? -1];
      const started = segments[row[place] ?? -1];
      const at = started?.from ?? ended?.to ?? 0;
      if (ended !== undefined) ended.to += by;
      if (started !== undefined) started.from += by;
      if (by === 0) return;
      const [from, to] = [fromGridSteps(at), fromGridSteps(at + by)];
      moves.push({ endOf: ended?.id, startOf: started?.id, from, to, by: fromGridSteps(by) });
    });
  }
  const isInOrder = segments.every((segment, index) => {
    const before = segments[index - 1];
    return before === undefined || (segment.adjoins ? segment.from === before.to : segment.from > before.to);
  });
  if (!isInOrder || !isFeasible({ ...rod, segments })) return [];
  return [{ kind: "move-lines", moves, sum: moves.reduce((sum, move) => sum + Math.abs(move.by), 0) }];
}

/** Places of segments, in rows of those that adjoin. */
function adjoiningRows(rod: GridRod): number[][] {
  const rows: number[][] = [];
  rod.segments.forEach((segment, index) => {
    const row = rows.at(-1);
    if (row !== undefined && segment.adjoins) row.push(index);
    else rows.push([index]);
  });
  return rows;
}

/**
 * How far each line of a row moves so that every segment grows by an amount within its intervals and the moves sum to the least. In a least
 * answer, lines held together by segments at an end of their interval include one that stays (or else all of them could move back
 * together), so places reached from a still line by such ends are the only ones to try.
 */
function leastOffsets(growthsOf: readonly (readonly Interval[])[]): number[] | undefined {
  const ends = growthsOf.map((intervals) => [...new Set(intervals.flat())]);
  const upward = placesAlong(ends);
  const downward = placesAlong([...ends].reverse().map((list) => list.map((end) => -end))).reverse();
  const places = upward.map((list, line) =>
    [...new Set([...list, ...(downward[line] ?? [])])].sort(
      (one, other) => Math.abs(one) - Math.abs(other) || one - other,
    ),
  );
  if (places.some((list) => list.length > MOST_PLACES)) return undefined;
  let reached = (places[0] ?? []).map((by) => ({ by, sum: Math.abs(by), path: [by] }));
  growthsOf.forEach((intervals, index) => {
    reached = (places[index + 1] ?? []).flatMap((by) => {
      const before = reached
        .filter((step) =>
          intervals.some(([least, greatest]) => by - step.by >= least && by - step.by <= greatest),
        )
        .reduce<(typeof reached)[number] | undefined>(
          (best, step) => (best === undefined || step.sum < best.sum ? step : best),
          undefined,
        );
      return before === undefined ? [] : [{ by, sum: before.sum + Math.abs(by), path: [...before.path, by] }];
    });
  });
  return reached.reduce<(typeof reached)[number] | undefined>(
    (best, step) => (best === undefined || step.sum < best.sum ? step : best),
    undefined,
  )?.path;
}

/** For each line, zero and every sum of ends of the segments between it and an earlier line. */
function placesAlong(ends: readonly (readonly number[])[]): number[][] {
  const places: number[][] = [[0]];
  for (const list of ends) {
    const before = places.at(-1) ?? [];
    places.push([
      ...new Set([0, ...before.slice(0, MOST_PLACES + 1).flatMap((place) => list.map((end) => place + end))]),
    ]);
  }
  return places;
}
