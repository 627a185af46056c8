/** How many sheets one over the other each place along a wall needs at the least. */
import { type Interval, subtractIntervals } from "../../geometry/interval.ts";
import { sliceVertical } from "../../geometry/polygon.ts";
import type { SheetZone } from "./zone.ts";

/** A zone and the height of its tallest sheet. */
interface Covered {
  readonly zone: SheetZone;
  readonly tallest: number;
}

/** A stretch along the wall over which one number of sheets is needed. */
export interface Need {
  readonly x: Interval;
  /** Sheets one over the other, at the least: with openings bridged by a notched sheet, and without. */
  readonly bridged: number;
  readonly parted: number;
}

const NOISE = 1e-9;

/** Left to right, without gaps. */
export function needsOf(covered: Covered): Need[] {
  const { ground } = covered.zone;
  const [left, right] = ground.bounds.x;
  const breaks = [
    left,
    right,
    ...ground.keepOuts.flatMap(({ rect }) => rect.x),
    ...ground.region.map(([x]) => x),
  ];
  const coarse = sorted(breaks.filter((x) => x >= left && x <= right));
  const xs = ground.rectangular
    ? coarse
    : sorted([...coarse, ...coarse.slice(1).flatMap((to, i) => steps(covered, [coarse[i] as number, to]))]);
  return xs.slice(1).map((to, i) => countOver(covered, [xs[i] as number, to]));
}

function sorted(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** Where under a rake one sheet more is needed: the free heights change evenly between two places. */
function steps(covered: Covered, x: Interval): number[] {
  const [low, high] = insideEnds(x);
  const [first, last] = [freeHeights(covered, x, low), freeHeights(covered, x, high)];
  if (first.length !== last.length) return [];
  const { joint } = covered.zone.cladding;
  return first.flatMap((from, i): number[] => {
    const to = last[i] as number;
    const [least, most] = [Math.min(from, to), Math.max(from, to)];
    const found: number[] = [];
    for (let height = covered.tallest; height < most; height += covered.tallest + joint) {
      if (height > least) found.push(low + ((height - from) / (to - from)) * (high - low));
    }
    return found;
  });
}

function insideEnds([from, to]: Interval): readonly [number, number] {
  const inset = Math.min(0.001, (to - from) / 4);
  return [from + inset, to - inset];
}

interface Free {
  readonly stretches: readonly Interval[];
  readonly heads: ReadonlySet<number>;
}

function freeAt({ zone: { ground } }: Covered, x: Interval, at: number): Free {
  const outs = ground.keepOuts
    .filter(({ rect }) => rect.x[0] <= x[0] && rect.x[1] >= x[1])
    .map(({ rect }) => rect.y);
  const slice = ground.rectangular ? [ground.bounds.y] : sliceVertical(ground.region, at);
  return {
    stretches: slice.flatMap((stretch) => subtractIntervals(stretch, outs)),
    heads: new Set(outs.map(([, head]) => head)),
  };
}

/** Heights to be covered one over the other; over a head a joint goes off. */
function freeHeights(covered: Covered, x: Interval, at: number): number[] {
  const { stretches, heads } = freeAt(covered, x, at);
  const { joint } = covered.zone.cladding;
  return stretches.map(([from, to]) => to - from - (heads.has(from) ? joint : 0));
}

function countOver(covered: Covered, x: Interval): Need {
  const { joint } = covered.zone.cladding;
  const counts = (covered.zone.ground.rectangular ? [x[0]] : insideEnds(x)).map((at) => ({
    parted: freeHeights(covered, x, at)
      .filter((height) => height > 0)
      .reduce((sum, height) => sum + Math.ceil((height + joint) / (covered.tallest + joint) - NOISE), 0),
    bridged: bridgedCount(covered, freeAt(covered, x, at).stretches),
  }));
  return {
    x,
    bridged: Math.min(...counts.map(({ bridged }) => bridged)),
    parted: Math.min(...counts.map(({ parted }) => parted)),
  };
}

/** From the lowest free place up, each sheet as high as it goes and a joint over it. */
function bridgedCount({ tallest, zone }: Covered, free: readonly Interval[]): number {
  let count = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const [from, to] of free) {
    for (let at = Math.max(from, reached); at < to - NOISE; at = reached) {
      count += 1;
      reached = at + tallest + zone.cladding.joint;
    }
  }
  return count;
}
