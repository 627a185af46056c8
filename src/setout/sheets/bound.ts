/**
 * How few sheets can cover a zone, whatever the layout: a lower bound to judge a layout by. Every sheet, with the joint
 * that goes with it, takes up a limited width, and at each place along the wall a least number of sheets stands one over
 * the other; a sheet's area is limited as well. Where no sheet may be notched, every jamb parts the columns besides.
 */
import { type Interval, subtractIntervals } from "../../geometry/interval.ts";
import { signedArea, sliceVertical } from "../../geometry/polygon.ts";
import { commonRect, rectArea } from "../../geometry/rect.ts";
import type { Planner } from "./planner.ts";

export interface SheetBound {
  /** No layout takes fewer sheets. */
  readonly least: number;
  /** No layout without a notch takes fewer sheets. */
  readonly unnotched: number;
  /** What the greater bound comes from. */
  readonly by: "area" | "width and height";
}

/** A stretch along the wall over which the same openings lie. */
interface Stretch {
  readonly x: Interval;
  /** Sheets one over the other, at the least: with openings bridged by a notched sheet, and without. */
  readonly bridged: number;
  readonly parted: number;
}

const NOISE = 1e-9;

export function sheetBound(planner: Planner): SheetBound {
  const { joint } = planner.zone.cladding;
  const stretches = stretchesOf(planner);
  const across = planner.widest + joint;
  const byArea = areaBound(planner);
  const byReach = Math.ceil(reach(stretches, joint, ({ bridged }) => bridged) / across - NOISE);
  const least = Math.max(byArea, byReach, stretches.length > 0 ? 1 : 0);
  const unnotched = Math.max(
    least,
    Math.ceil(reach(stretches, joint, ({ parted }) => parted) / across - NOISE),
    byJambs(planner, stretches),
  );
  return { least, unnotched, by: byArea > Math.max(byReach, unnotched - 1) ? "area" : "width and height" };
}

/** The least number of sheets from a column's left edge to the zone's right end. */
export function leastFrom(planner: Planner): (x: number) => number {
  const { joint } = planner.zone.cladding;
  const stretches = stretchesOf(planner);
  const across = planner.widest + joint;
  return (x) => {
    const rest = stretches
      .filter((stretch) => stretch.x[1] > x)
      .map((stretch) => ({ ...stretch, x: [Math.max(x, stretch.x[0]), stretch.x[1]] as const }));
    return Math.max(0, Math.ceil(reach(rest, joint, ({ bridged }) => bridged) / across - NOISE));
  };
}

/** The number of sheets over each place, summed along the wall; a step in it may fall within a joint. */
function reach(stretches: readonly Stretch[], joint: number, count: (stretch: Stretch) => number): number {
  let sum = 0;
  stretches.forEach((stretch, i) => {
    const next = stretches[i + 1];
    sum += count(stretch) * (stretch.x[1] - stretch.x[0]);
    sum += next ? -joint * Math.abs(count(next) - count(stretch)) : joint * count(stretch);
  });
  return sum;
}

function areaBound({ zone, shapes }: Planner): number {
  const { ground, cladding } = zone;
  const cell = Math.max(
    ...shapes.map(({ width, height }) => (width + cladding.joint) * (height + cladding.joint)),
  );
  const region = Math.abs(signedArea(ground.region));
  const lost = ground.keepOuts.reduce((sum, { rect }) => {
    const inside = commonRect(rect, ground.bounds);
    const round = inside ? 2 * (inside.x[1] - inside.x[0] + inside.y[1] - inside.y[0]) : 0;
    return sum + (inside ? rectArea(inside) : 0) + round * cladding.joint;
  }, 0);
  const rounds = ground.rounds.reduce((sum, { polygon }) => sum + Math.abs(signedArea(polygon)), 0);
  return Math.ceil((region - lost - rounds) / cell - NOISE);
}

function stretchesOf(planner: Planner): Stretch[] {
  const { ground } = planner.zone;
  const [left, right] = ground.bounds.x;
  const breaks = [
    left,
    right,
    ...ground.keepOuts.flatMap(({ rect }) => rect.x),
    ...ground.region.map(([x]) => x),
  ].filter((x) => x >= left && x <= right);
  const sorted = [...new Set(breaks)].sort((a, b) => a - b);
  return sorted.slice(1).map((to, i) => countOver(planner, [sorted[i] as number, to]));
}

function countOver(planner: Planner, x: Interval): Stretch {
  const { ground, cladding } = planner.zone;
  const outs = ground.keepOuts
    .filter(({ rect }) => rect.x[0] <= x[0] && rect.x[1] >= x[1])
    .map(({ rect }) => rect.y);
  const heads = new Set(outs.map(([, head]) => head));
  const height = Math.max(...planner.shapes.map((shape) => shape.height));
  const pitch = height + cladding.joint;
  const slices = ground.rectangular
    ? [[ground.bounds.y]]
    : insideEnds(x).map((at) => sliceVertical(ground.region, at));
  const counts = slices.map((slice) => {
    const free = slice.flatMap((stretch) => subtractIntervals(stretch, outs));
    const parted = free.reduce((sum, [from, to]) => {
      const low = heads.has(from) ? from + cladding.joint : from;
      return sum + Math.max(0, Math.ceil((to - low + cladding.joint) / pitch - NOISE) * Number(to > low));
    }, 0);
    return { parted, bridged: bridgedCount(free, { height, joint: cladding.joint }) };
  });
  return {
    x,
    bridged: Math.min(...counts.map(({ bridged }) => bridged)),
    parted: Math.min(...counts.map(({ parted }) => parted)),
  };
}

function insideEnds([from, to]: Interval): readonly number[] {
  const inset = Math.min(0.01, (to - from) / 4);
  return [from + inset, to - inset];
}

/** From the lowest free place up, each sheet as high as it goes and a joint over it. */
function bridgedCount(
  free: readonly Interval[],
  { height, joint }: { height: number; joint: number },
): number {
  let count = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const [from, to] of free) {
    for (let at = Math.max(from, reached); at < to - NOISE; at = reached) {
      count += 1;
      reached = at + height + joint;
    }
  }
  return count;
}

/** Columns between jambs, each of as many rows as stand there at the least; up to two joints may lie in a stretch's ends. */
function byJambs(planner: Planner, stretches: readonly Stretch[]): number {
  const { ground, cladding } = planner.zone;
  const jambs = new Set(ground.keepOuts.flatMap(({ rect }) => rect.x));
  const groups: Stretch[][] = [];
  for (const stretch of stretches) {
    if (groups.length === 0 || jambs.has(stretch.x[0])) groups.push([]);
    groups.at(-1)?.push(stretch);
  }
  return groups.reduce((sum, group, i) => {
    const length = (group.at(-1) as Stretch).x[1] - (group[0] as Stretch).x[0];
    const inner = Number(i > 0) + Number(i < groups.length - 1);
    const clear = length + cladding.joint * (1 - inner);
    const columns = Math.max(0, Math.ceil(clear / (planner.widest + cladding.joint) - NOISE));
    return sum + columns * Math.min(...group.map(({ parted }) => parted));
  }, 0);
}
