/** The two upright sides of a wall's body: the planes that hold most of it, with outline and openings as seen from either. */
import type { Point } from "../../../geometry/point.ts";
import { type Polygon, polygonBounds, signedArea } from "../../../geometry/polygon.ts";
import { commonRect, type Rect, rectOutline, rectsOverlap } from "../../../geometry/rect.ts";
import { type Region, regionArea, subtract, union } from "../../../geometry/region.ts";
import { message } from "../../../text/message.ts";
import { cleaned } from "../face/outline.ts";
import type { TakenOpening } from "../face/shape.ts";
import type { Fault } from "./reading.ts";
import { cutPolygons, onPlane, outFrom, type UprightPlane } from "./section.ts";
import type { CutOpening, Part, Side } from "./solids.ts";
import { ringNormal, type Vector } from "./space.ts";
import { tidy } from "./tidy.ts";
import { FLUSH_MM, openingFault, openingIn, reachOf, SLIVER_MM2, voidOf } from "./voids.ts";

export interface WallSide extends UprightPlane {
  /** Where its left end lies along the plane, from the foot of the file's origin (mm). */
  readonly left: number;
  /** On the plane: x from the left end, y up from the file's own zero (mm). */
  readonly outline: readonly Point[];
  readonly openings: readonly TakenOpening[];
  /** What deserves attention and hinders nothing. */
  readonly notes: readonly Fault["says"][];
  /** What keeps this side from being clad. */
  readonly faults: readonly Fault[];
  /** Between the two sides (mm). */
  readonly thickness: number;
}

/** Sides that lean less off the plumb are upright (sine). */
const PLUMB = 1e-4;

/** A plane counts as a wall's side where it holds at least so much of what the largest holds. */
const LARGE_SHARE = 0.5;

/** What stands out by more is told (mm). */
const PROUD_MM = 1;

/** What is asked about reaches so far past the wall (mm). */
const ROOM_MM = 1000;

interface Upright {
  readonly side: Side;
  readonly area: number;
  readonly normal: Vector;
}

export type WallSides =
  | { readonly ok: true; readonly sides: readonly [WallSide, WallSide] }
  | { readonly ok: false; readonly fault: "leaning" | "uneven" };

export function wallSides(
  parts: readonly Part[],
  openings: readonly CutOpening[],
  unitMm: number,
): WallSides {
  const uprights: Upright[] = [];
  let leaning = 0;
  for (const side of parts.flatMap((part) => part.sides)) {
    const ring = ringNormal(side[0] ?? []);
    const length = Math.hypot(...ring);
    if (!(length > 0)) continue;
    const rise = Math.abs(ring[2] / length);
    if (rise < PLUMB)
      uprights.push({ side, area: length / 2, normal: ring.map((one) => one / length) as unknown as Vector });
    else if (rise < 1 - PLUMB) leaning = Math.max(leaning, length / 2);
  }
  const largest = uprights.reduce((most, { area }) => Math.max(most, area), 0);
  if (leaning > largest || uprights.length === 0) return { ok: false, fault: "leaning" };
  const [nx, ny] = mainNormal(uprights);
  const outward: Point = [nx, ny];
  const offsets = planesAcross(uprights, outward);
  const most = Math.max(...offsets.map(({ area }) => area));
  const large = offsets.filter(({ area }) => area >= most * LARGE_SHARE).map(({ offset }) => offset);
  const [low, high] = [Math.min(...large), Math.max(...large)];
  const thickness = high - low;
  const across = parts
    .flatMap(({ sides }) => sides.flat(2))
    .map((point) => outFrom({ along: [0, 0], outward, offset: 0 }, point));
  const [lowest, highest] = reachOf(across);
  if (thickness <= FLUSH_MM || highest - high > thickness || low - lowest > thickness)
    return { ok: false, fault: "uneven" };
  const plane = (sign: 1 | -1, offset: number): UprightPlane => {
    const out: Point = [nx * sign + 0, ny * sign + 0];
    return { outward: out, along: [-out[1] + 0, out[0]], offset: offset * sign };
  };
  const seen = (from: UprightPlane, proud: number): WallSide =>
    sideSeen({ parts, openings, plane: from, thickness, proud, unitMm });
  return { ok: true, sides: [seen(plane(1, high), highest - high), seen(plane(-1, low), low - lowest)] };
}

/** The direction, of either sign, that most of the upright area looks to. */
function mainNormal(uprights: readonly Upright[]): Vector {
  const groups: { normal: Vector; area: number }[] = [];
  for (const { normal, area } of uprights) {
    const same = groups.find(({ normal: [x, y] }) => Math.abs(x * normal[1] - y * normal[0]) < PLUMB);
    if (same) same.area += area;
    else groups.push({ normal, area });
  }
  return groups
    .reduce((best, one) => (one.area > best.area ? one : best))
    .normal.map((one) => exact(one)) as unknown as Vector;
}

/** Axes that are meant square come out of turns with a tail: they are put straight. */
function exact(part: number): number {
  const whole = Math.round(part);
  return Math.abs(part - whole) < 1e-9 ? whole + 0 : part;
}

function planesAcross(uprights: readonly Upright[], outward: Point): { offset: number; area: number }[] {
  const planes: { offset: number; area: number }[] = [];
  for (const { side, area, normal } of uprights) {
    if (Math.abs(normal[0] * outward[1] - normal[1] * outward[0]) >= PLUMB) continue;
    const offset = outFrom(
      { along: [0, 0], outward, offset: 0 },
      (side[0] as readonly Vector[])[0] as Vector,
    );
    const same = planes.find((plane) => Math.abs(plane.offset - offset) <= FLUSH_MM);
    if (same) same.area += area;
    else planes.push({ offset, area });
  }
  return planes;
}

interface Seen {
  readonly parts: readonly Part[];
  readonly openings: readonly CutOpening[];
  readonly plane: UprightPlane;
  readonly thickness: number;
  readonly proud: number;
  readonly unitMm: number;
}

function sideSeen({ parts, openings, plane, thickness, proud, unitMm }: Seen): WallSide {
  const faults: Fault[] = [];
  const notes: Fault["says"][] = [];
  if (proud > PROUD_MM) notes.push(message("intake.ifc.proud", { proud: tidy(proud, unitMm) }));
  const regions = parts.flatMap((part) => partOnPlane(part, plane));
  const voids = openings.map((one) => voidOf(one, plane));
  const faceted = parts.some((part) => part.faceted);
  const rings = regions.flatMap(({ outline, holes }) => subtract({ outline, holes }, []));
  const box = bounds(rings.map(({ outline }) => outline));
  // Where openings are cut in the body already, they are put back: they are told of by themselves.
  const back = faceted ? voids.flatMap(({ rect }) => (rect && commonRect(rect, box)) ?? []) : [];
  const joined = joinedRegions(rings, back.map(rectOutline)).filter((one) => regionArea(one) > SLIVER_MM2);
  const [whole, ...others] = joined.sort((a, b) => regionArea(b) - regionArea(a));
  if (others.length > 0 || !whole) {
    faults.push({
      says: message("intake.ifc.split", { count: joined.length }),
      hint: message("intake.hint.ifc.split"),
    });
  }
  const left = whole ? polygonBounds(whole.outline).x[0] : 0;
  const outline = whole ? cleaned(tidied(whole.outline, left, unitMm)) : [];
  const taken: TakenOpening[] = [];
  for (const opening of voids) {
    const placedIn = whole && openingIn(opening, { outline, left, unitMm });
    if (!placedIn) continue;
    if ("note" in placedIn) notes.push(placedIn.note);
    else if ("fault" in placedIn) faults.push(placedIn.fault);
    else {
      if (!opening.square) notes.push(message("intake.ifc.round", { entity: opening.entity }));
      const over = taken.find((other) => rectsOverlap(other, placedIn.opening));
      if (over) faults.push(openingFault("overlaps", opening.entity));
      else taken.push(placedIn.opening);
    }
  }
  for (const hole of whole?.holes ?? []) {
    const { x, y } = polygonBounds(tidied(hole, left, unitMm));
    if (!taken.some((other) => rectsOverlap(other, { x, y }))) taken.push({ x, y });
  }
  return { ...plane, left, outline, openings: taken, notes, faults, thickness };
}

function tidied(points: Polygon, left: number, unitMm: number): Point[] {
  return points.map(([x, y]): Point => [tidy(x - left, unitMm), tidy(y, unitMm)]);
}

function bounds(polygons: readonly Polygon[]): Rect {
  return polygonBounds(polygons.flat());
}

/** What of a part lies in the plane, its cuts taken off. */
function partOnPlane({ sides, cuts }: Part, plane: UprightPlane): Region[] {
  const flush = sides.filter((side) =>
    side.every((ring) => ring.every((point) => Math.abs(outFrom(plane, point)) <= FLUSH_MM)),
  );
  const rings = flush.map((side) => side.map((ring) => ring.map((point) => onPlane(plane, point))));
  const { x, y } = bounds(rings.flat());
  if (!(x[1] > x[0] && y[1] > y[0])) return [];
  const reach: Rect = { x: [x[0] - ROOM_MM, x[1] + ROOM_MM], y: [y[0] - ROOM_MM, y[1] + ROOM_MM] };
  const clips = cuts.flatMap((cut) => cutPolygons(plane, cut, reach));
  return rings.flatMap(([outer = [], ...inner]) =>
    Math.abs(signedArea(outer)) > 0
      ? subtract(outer, inner).flatMap((region) => subtract(region, clips))
      : [],
  );
}

/** Regions and rectangles as one, with the holes that stay. */
function joinedRegions(regions: readonly Region[], back: readonly Polygon[]): Region[] {
  const joined = union([...regions.map(({ outline }) => outline), ...back]);
  const solid = (hole: Polygon): Polygon[] => {
    // A hole of one region is none where another covers it.
    const covers = regions.filter(({ holes }) => !holes.includes(hole)).map(({ outline }) => outline);
    return subtract(hole, [...covers, ...back]).map(({ outline }) => outline);
  };
  const holes = regions.flatMap((region) => region.holes.flatMap(solid));
  return joined.flatMap((region) => subtract(region, holes));
}
