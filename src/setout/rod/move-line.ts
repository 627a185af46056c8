import { fromGridSteps } from "../../units/length.ts";
import { type CountVector, countsCanKeepLook, countVectors } from "./counts.ts";
import { isFeasible, MOST_TRIALS, unfilledSegments } from "./feasible.ts";
import type { GridRod, GridSegment } from "./grid-rod.ts";
import type { NearestChange } from "./outcome.ts";

/** A control line by the segments it ends and starts, as places in the rod; -1 for none. */
interface MovableLine {
  readonly endOf: number;
  readonly startOf: number;
}

/** From least to greatest, in grid steps, both included. */
export type Interval = readonly [least: number, greatest: number];

function linesOf(rod: GridRod): MovableLine[] {
  const lines: MovableLine[] = [];
  rod.segments.forEach((segment, index) => {
    if (segment.adjoins) lines.push({ endOf: index - 1, startOf: index });
    else {
      if (index > 0) lines.push({ endOf: index - 1, startOf: -1 });
      lines.push({ endOf: -1, startOf: index });
    }
  });
  lines.push({ endOf: rod.segments.length - 1, startOf: -1 });
  return lines;
}

/** For each line by itself, the least move that makes the rod possible; lines that cannot help are left out. Least move first. */
export function lineMoves(rod: GridRod): NearestChange[] {
  const unfilled = unfilledSegments(rod);
  return linesOf(rod)
    .flatMap((line) => {
      if (unfilled.some((index) => index !== line.endOf && index !== line.startOf)) return [];
      const by = leastMove(rod, line);
      return by === undefined ? [] : [{ line, by }];
    })
    .sort((one, other) => Math.abs(one.by) - Math.abs(other.by))
    .map(({ line, by }) => {
      const at = rod.segments[line.startOf]?.from ?? rod.segments[line.endOf]?.to ?? 0;
      return {
        kind: "move-line",
        endOf: rod.segments[line.endOf]?.id,
        startOf: rod.segments[line.startOf]?.id,
        from: fromGridSteps(at),
        to: fromGridSteps(at + by),
        by: fromGridSteps(by),
      };
    });
}

/** Moves further than one board and one gap would only repeat nearer ones with another board. */
function furthestMove(rod: GridRod): number {
  return Math.max(...rod.widths) + rod.band[1];
}

function leastMove(rod: GridRod, line: MovableLine): number | undefined {
  const ended = rod.segments[line.endOf];
  const started = rod.segments[line.startOf];
  const unbound: Interval[] = [[-furthestMove(rod), furthestMove(rod)]];
  // The segment that the line ends grows by the move, the one that it starts shrinks by it.
  const forEnded = ended === undefined ? unbound : growths(rod, ended);
  const forStarted =
    started === undefined
      ? unbound
      : growths(rod, started).map(([least, greatest]): Interval => [-greatest, -least]);
  const moves = new Set<number>();
  for (const one of forEnded) {
    for (const other of forStarted) {
      const least = Math.max(one[0], other[0]);
      const greatest = Math.min(one[1], other[1]);
      // Counts that already fit where the line stands are refused for their order, which a move does not change.
      if (least <= greatest && (least > 0 || greatest < 0)) moves.add(least > 0 ? least : greatest);
    }
  }
  return [...moves]
    .sort((one, other) => Math.abs(one) - Math.abs(other) || one - other)
    .slice(0, MOST_TRIALS)
    .find((by) => isFeasible(moved(rod, line, by)));
}

/** By how much a segment may grow so that some counts fit it, shrinking below zero. */
export function growths(rod: GridRod, segment: GridSegment): Interval[] {
  const length = segment.to - segment.from;
  const reach = furthestMove(rod);
  return countVectors(rod, segment, {
    lengths: [Math.max(1, length - reach), length + reach],
    band: rod.band,
  })
    .filter((vector) => countsCanKeepLook(vector, rod.maxTouching))
    .map((vector: CountVector): Interval => {
      const [min, max] = rod.band;
      return [
        Math.max(-reach, vector.timber + vector.gaps * min - length),
        Math.min(reach, vector.timber + vector.gaps * max - length),
      ];
    });
}

/** The rod with one line moved; without any segment where that would push one line past another. */
function moved(rod: GridRod, line: MovableLine, by: number): GridRod {
  const segments = rod.segments.map((segment, index) => ({
    ...segment,
    from: segment.from + (index === line.startOf ? by : 0),
    to: segment.to + (index === line.endOf ? by : 0),
  }));
  const isInOrder = segments.every((segment, index) => {
    const before = segments[index - 1];
    if (segment.to <= segment.from) return false;
    // A line that would land on its neighbour's would join two rows that are apart; the move stops short of that.
    return before === undefined || (segment.adjoins ? segment.from === before.to : segment.from > before.to);
  });
  return {
    ...rod,
    segments: isInOrder ? segments : segments.map((segment) => ({ ...segment, to: segment.from })),
  };
}
