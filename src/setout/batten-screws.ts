/**
 * Screws of a batten: where along it there is timber to hold them, and backing where there is none. A batten that misses
 * the studs still finds rims, plates and headers; between those, blocks are set behind the sheathing.
 */
import { common, type Interval, intervalLength, overlaps } from "../geometry/interval.ts";
import { boundsOverlap, polygonBounds, sliceVertical } from "../geometry/polygon.ts";
import { type Rect, rectOutline } from "../geometry/rect.ts";
import { snap } from "../units/length.ts";
import type { DraftBatten } from "./battens.ts";
import type { Solid } from "./facade.ts";

export interface ScrewPoint {
  readonly x: number;
  readonly y: number;
  readonly solid: Solid;
}

/** Widest spacing of a batten's screws (common practice). */
const SPACING_MM = 600;
const FROM_BATTEN_END_MM = 50;
const FROM_BATTEN_EDGE_MM = 12;
const FROM_SOLID_EDGE_MM = 8;
/** A screw may move this far from its even place to meet timber. */
const MAY_MOVE_MM = 200;
const CLOSEST_MM = 40;
const BLOCK = { height: 89, thickness: 38 } as const;

interface Hold {
  readonly y: Interval;
  readonly x: number;
  readonly solid: Solid;
}

/** The strip that a batten covers. */
type Strip = Pick<DraftBatten, "x" | "y">;

/** Finds a batten's screw points; `addBlock` sets a backing block at a height and returns it, or undefined where none can be. */
export function screwPoints(
  batten: Strip,
  solids: readonly Solid[],
  addBlock: (y: number) => Solid | undefined,
): { readonly points: readonly ScrewPoint[]; readonly missed: readonly number[] } {
  const holds = holdsOf(batten, solids);
  const wanted = evenPlaces(batten.y);
  const points: ScrewPoint[] = [];
  const missed: number[] = [];
  for (const y of wanted) {
    const hold = nearestHold(holds, y) ?? blockHold(batten, addBlock(y));
    if (!hold) {
      missed.push(y);
      continue;
    }
    const at = snap(Math.min(Math.max(y, hold.y[0]), hold.y[1]));
    if (!points.some((point) => Math.abs(point.y - at) < CLOSEST_MM))
      points.push({ x: hold.x, y: at, solid: hold.solid });
  }
  return { points, missed };
}

/** A screw in the middle of every timber that a strip crosses, from end to end. */
export function crossingPoints(strip: Strip, solids: readonly Solid[]): ScrewPoint[] {
  return holdsOf(strip, solids)
    .map(({ x, y, solid }) => ({ x, y: snap((y[0] + y[1]) / 2), solid }))
    .sort((a, b) => a.y - b.y)
    .filter(({ y }, i, all) => i === 0 || y - (all[i - 1] as ScrewPoint).y >= CLOSEST_MM);
}

function evenPlaces([from, to]: Interval): number[] {
  const inset = Math.min(FROM_BATTEN_END_MM, (to - from) / 4);
  const [first, last] = [from + inset, to - inset];
  const gaps = Math.max(1, Math.ceil((last - first) / SPACING_MM - 1e-9));
  const places: number[] = [];
  for (let i = 0; i <= gaps; i++) places.push(snap(first + ((last - first) * i) / gaps));
  return places;
}

/** Where each solid can hold a screw through the batten: upright timber along its length, bands at their height. */
export function holdsOf(batten: Strip, solids: readonly Solid[]): Hold[] {
  const inset = Math.min(FROM_BATTEN_EDGE_MM, intervalLength(batten.x) / 3);
  const usable: Interval = [batten.x[0] + inset, batten.x[1] - inset];
  const endInset = Math.min(FROM_BATTEN_END_MM / 2, intervalLength(batten.y) / 5);
  const along: Interval = [batten.y[0] + endInset, batten.y[1] - endInset];
  const holds: Hold[] = [];
  for (const solid of solids) {
    if (!boundsOverlap(solid.region, usable, along)) continue;
    const box = polygonBounds(solid.region);
    const x = common(usable, [box.x[0] + FROM_SOLID_EDGE_MM, box.x[1] - FROM_SOLID_EDGE_MM]);
    if (!x) continue;
    const at = snap((x[0] + x[1]) / 2);
    for (const stretch of sliceVertical(solid.region, at)) {
      const y = common(along, [stretch[0] + FROM_SOLID_EDGE_MM, stretch[1] - FROM_SOLID_EDGE_MM]);
      if (y) holds.push({ x: at, y: [snap(y[0]), snap(y[1])], solid });
    }
  }
  return holds;
}

/** The hold at a height, uprights before bands; else the nearest one that the screw may move to. */
function nearestHold(holds: readonly Hold[], y: number): Hold | undefined {
  let best: Hold | undefined;
  let least = MAY_MOVE_MM;
  for (const hold of holds) {
    const off = Math.max(hold.y[0] - y, y - hold.y[1], 0);
    const nearer =
      off < least || (off === least && (!best || intervalLength(hold.y) > intervalLength(best.y)));
    if (nearer) {
      best = hold;
      least = off;
    }
  }
  return best;
}

function blockHold(batten: Strip, block: Solid | undefined): Hold | undefined {
  return block && holdsOf(batten, [block])[0];
}

/** The space between the two uprights on each side of a batten's middle at a height, or undefined where one is missing. */
export function bayAt(solids: readonly Solid[], x: number, y: number): Interval | undefined {
  let left = Number.NEGATIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  for (const solid of solids) {
    if (isLevel(solid)) continue;
    const box = polygonBounds(solid.region);
    if (y < box.y[0] || y > box.y[1]) continue;
    if (box.x[1] <= x) left = Math.max(left, box.x[1]);
    else if (box.x[0] >= x) right = Math.min(right, box.x[0]);
    else return undefined;
  }
  return Number.isFinite(left) && Number.isFinite(right) ? [left, right] : undefined;
}

/**
 * Where a block that holds a screw at y can lie in its bay without meeting another block, a plate or a hole through the
 * wall: at y, or moved as little as needed; undefined where there is no room.
 */
export function freeBlockPlace(
  { solids, holes }: { readonly solids: readonly Solid[]; readonly holes: readonly Rect[] },
  bay: Interval,
  y: number,
): number | undefined {
  const half = BLOCK.height / 2;
  const reach = half - FROM_SOLID_EDGE_MM + MAY_MOVE_MM;
  const near: Interval = [y - reach - half, y + reach + half];
  const taken = solids
    .filter((solid) => isLevel(solid) && boundsOverlap(solid.region, bay, near))
    .flatMap((solid) => heightsWithin(solid, bay))
    .concat(holes.filter((hole) => overlaps(hole.x, bay)).map((hole) => hole.y));
  const places = [y, ...taken.flatMap(([from, to]) => [to + half, from - half])]
    .filter((at) => Math.abs(at - y) <= reach)
    .filter((at) => !taken.some((other) => overlaps(other, [at - half, at + half])));
  const best = places.sort((a, b) => Math.abs(a - y) - Math.abs(b - y))[0];
  return best === undefined ? undefined : snap(best);
}

/** Not one of the timbers that battens run along. */
function isLevel({ kind }: Solid): boolean {
  return kind !== "stud" && kind !== "trimmer" && kind !== "joist";
}

/** The height that a solid takes up anywhere in a bay; plates under a rake climb through it. */
function heightsWithin(solid: Solid, [from, to]: Interval): Interval[] {
  const box = polygonBounds(solid.region).x;
  const ends = [Math.max(from, box[0]) + INSIDE_MM, Math.min(to, box[1]) - INSIDE_MM];
  const heights = ends.flatMap((x) => sliceVertical(solid.region, x).flat());
  return heights.length === 0 ? [] : [[Math.min(...heights), Math.max(...heights)]];
}

/** Just inside the ends, where a slice is certain to cut the solid. */
const INSIDE_MM = 0.01;

/** A block laid flat between two uprights, its face against the sheathing. */
export function blockRegion(bay: Interval, y: number): ReturnType<typeof rectOutline> {
  return rectOutline({ x: bay, y: [snap(y - BLOCK.height / 2), snap(y + BLOCK.height / 2)] });
}

export const BLOCK_SECTION = BLOCK;

/** Depth of a block into the wall: laid double where one thickness does not give the bite that is asked. */
export function blockDepth(bite: number): number {
  return BLOCK.thickness * Math.max(1, Math.ceil(bite / BLOCK.thickness));
}
