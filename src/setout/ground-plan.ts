/**
 * The ground that a zone's pieces are laid out on: its region round the corners, what must be kept clear in it, and the
 * fast questions that courses, columns and battens ask of both.
 */
import type { Interval } from "../geometry/interval.ts";
import { overlaps, subtractIntervals } from "../geometry/interval.ts";
import type { Point } from "../geometry/point.ts";
import {
  circumscribed,
  counterClockwise,
  type Polygon,
  polygonBounds,
  rectInsidePolygon,
  sliceVertical,
} from "../geometry/polygon.ts";
import { commonRect, type Rect, rectOutline, rectsOverlap } from "../geometry/rect.ts";
import { intersect, type Region, subtract } from "../geometry/region.ts";
import type { Face, Opening, Project, Zone } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import { type FaceEnds, MEETS_WITHIN_MM } from "./corners.ts";

/** An opening with the clearances round it: no cladding lies in `rect`. */
export interface KeepOut {
  readonly of: string;
  readonly opening: Rect;
  readonly rect: Rect;
  /** Height of the lines that the opening asks for; absent where the clearance runs down to the base. */
  readonly sillLine?: number;
  readonly headLine: number;
}

/** A round hole for a duct, tap or lamp, with its clearance. */
export interface RoundKeepOut {
  readonly of: string;
  readonly centre: Point;
  readonly radius: number;
  readonly polygon: Polygon;
  readonly bounds: Rect;
}

export interface ZoneGround {
  readonly face: Face;
  readonly zone: Zone;
  readonly region: Polygon;
  readonly bounds: Rect;
  readonly rectangular: boolean;
  readonly keepOuts: readonly KeepOut[];
  readonly rounds: readonly RoundKeepOut[];
}

const CIRCLE_SIDES = 48;

export function keepOutsOf(project: Project, face: Face): KeepOut[] {
  const bottom = Math.min(...face.outline.map(([, y]) => y));
  return face.openings.map((opening) => keepOut(project, opening, bottom));
}

function keepOut(project: Project, opening: Opening, bottom: number): KeepOut {
  const clear = opening.clearance ?? {
    jamb: project.limits.clearances.jamb.value,
    head: project.limits.clearances.head.value,
    sill: project.limits.clearances.sill.value,
  };
  const sillLine = snap(opening.y[0] - clear.sill);
  const headLine = snap(opening.y[1] + clear.head);
  return {
    of: opening.id,
    opening: { x: opening.x, y: opening.y },
    rect: {
      x: [snap(opening.x[0] - clear.jamb), snap(opening.x[1] + clear.jamb)],
      y: [opening.toBase ? Math.min(bottom, sillLine) : sillLine, headLine],
    },
    ...(opening.toBase ? {} : { sillLine }),
    headLine,
  };
}

export function roundsOf(project: Project, face: Face): RoundKeepOut[] {
  return (face.penetrations ?? []).map((one) => {
    const clear = one.clearance?.value ?? project.limits.clearances.penetration.value;
    const radius = snap(one.diameter / 2 + clear);
    const polygon = circumscribed({ centre: [one.x, one.y], radius, sides: CIRCLE_SIDES });
    return { of: one.id, centre: [one.x, one.y], radius, polygon, bounds: polygonBounds(polygon) };
  });
}

/** The face's outline with its upright edges at x = 0 and x = length moved out (or in) to the cladding's ends. */
export function reachedOutline(face: Face, length: number, ends: FaceEnds): Polygon {
  // A slanted wall's length is no whole number: what the reader takes for the wall's end is made the wall's end.
  const atEnd = (x: number): number => [0, length].find((end) => Math.abs(x - end) <= MEETS_WITHIN_MM) ?? x;
  const outline = counterClockwise(face.outline as Polygon).map(([x, y]): Point => [atEnd(x), y]);
  return moveEdge(moveEdge(outline, { at: 0, to: ends.left.x, outward: -1 }), {
    at: length,
    to: ends.right.x,
    outward: 1,
  });
}

/** The region of a zone carried on past the face's right end, with level edges. */
export function reachedTo(ground: ZoneGround, to: number): ZoneGround {
  const region = moveEdge(ground.region, { at: ground.bounds.x[1], to, outward: 1 });
  return { ...ground, region, bounds: polygonBounds(region), rectangular: isRectangle(region) };
}

function moveEdge(
  outline: Polygon,
  { at, to, outward }: { at: number; to: number; outward: -1 | 1 },
): Polygon {
  if (at === to) return outline;
  const box = polygonBounds(outline);
  // Inward: cut the strip off. Outward: lengthen each upright edge that stands at the face's end.
  if ((to - at) * outward < 0) {
    const keep: Rect = outward < 0 ? { x: [to, box.x[1]], y: box.y } : { x: [box.x[0], to], y: box.y };
    return intersect(outline, rectOutline(keep))[0]?.outline ?? [];
  }
  const points: Point[] = [];
  outline.forEach((point, i) => {
    const next = outline[(i + 1) % outline.length] as Point;
    points.push(point);
    if (point[0] === at && next[0] === at) points.push([to, point[1]], [to, next[1]]);
  });
  return withoutIdleCorners(points);
}

/** Leaves out corners that lie on the straight line between their neighbours. */
function withoutIdleCorners(polygon: Polygon): Polygon {
  return polygon.filter((p, i) => {
    const a = polygon[(i + polygon.length - 1) % polygon.length] as Point;
    const b = polygon[(i + 1) % polygon.length] as Point;
    return (p[0] - a[0]) * (b[1] - a[1]) !== (p[1] - a[1]) * (b[0] - a[0]);
  });
}

export function zoneGround(args: {
  readonly face: Face;
  readonly zone: Zone;
  readonly outline: Polygon;
  readonly keepOuts: readonly KeepOut[];
  readonly rounds: readonly RoundKeepOut[];
}): ZoneGround {
  const { face, zone, outline } = args;
  const box = polygonBounds(outline);
  const wanted: Rect = {
    x: [zone.x[0] === "left end" ? box.x[0] : zone.x[0], zone.x[1] === "right end" ? box.x[1] : zone.x[1]],
    y: zone.y ?? box.y,
  };
  const region = rectInsidePolygon(wanted, outline)
    ? rectOutline(wanted)
    : (intersect(outline, rectOutline(wanted))[0]?.outline ?? []);
  const bounds = polygonBounds(region);
  return {
    face,
    zone,
    region,
    bounds,
    rectangular: isRectangle(region),
    keepOuts: args.keepOuts.filter(({ rect }) => rectsOverlap(rect, bounds)),
    rounds: args.rounds.filter((round) => rectsOverlap(round.bounds, bounds)),
  };
}

function isRectangle(polygon: Polygon): boolean {
  return (
    polygon.length === 4 &&
    polygon.every((p, i) => {
      const next = polygon[(i + 1) % 4] as Point;
      return p[0] === next[0] || p[1] === next[1];
    })
  );
}

/** What can be clad within a rectangle: its share of the zone's region less everything kept clear, left to right. */
export function freeWithin(ground: ZoneGround, rect: Rect): Region[] {
  const box = commonRect(rect, ground.bounds);
  if (!box) return [];
  const keepOuts = ground.keepOuts.filter((one) => rectsOverlap(one.rect, box));
  const rounds = ground.rounds.filter((one) => rectsOverlap(one.bounds, box));
  const whole = ground.rectangular || rectInsidePolygon(box, ground.region);
  if (whole && rounds.length === 0) {
    // Courses and joints meet most openings squarely: what is left of them is told without the polygon library.
    if (keepOuts.every(({ rect: out }) => out.y[0] <= box.y[0] && out.y[1] >= box.y[1])) {
      const outs = keepOuts.map((one) => one.rect.x);
      return subtractIntervals(box.x, outs).map((x) => plainRegion({ x, y: box.y }));
    }
    if (keepOuts.every(({ rect: out }) => out.x[0] <= box.x[0] && out.x[1] >= box.x[1])) {
      const outs = keepOuts.map((one) => one.rect.y);
      return subtractIntervals(box.y, outs).map((y) => plainRegion({ x: box.x, y }));
    }
  }
  const parts = whole
    ? [{ outline: rectOutline(box), holes: [] }]
    : intersect(ground.region, rectOutline(box));
  const clips = [...keepOuts.map((one) => rectOutline(one.rect)), ...rounds.map((one) => one.polygon)];
  return clips.length === 0
    ? parts
    : clips.length === 0
      ? parts
      : parts.flatMap((part) => subtract(part, clips));
}

function plainRegion(rect: Rect): Region {
  return { outline: rectOutline(rect), holes: [] };
}

/** The stretches over the whole width of an upright strip that lie in the region and clear of openings. */
export function freeUpright(ground: ZoneGround, x: Interval): Interval[] {
  const outs = ground.keepOuts.filter((one) => overlaps(one.rect.x, x)).map((one) => one.rect.y);
  const stretches: Interval[] = ground.rectangular
    ? x[0] >= ground.bounds.x[0] && x[1] <= ground.bounds.x[1]
      ? [ground.bounds.y]
      : []
    : commonStretches(uprightSlice(ground, x[0], 1), uprightSlice(ground, x[1], -1));
  return stretches.flatMap((stretch) => subtractIntervals(stretch, outs));
}

/** Just inside the strip, so that a strip along the region's own edge counts as inside it. */
const INSIDE_MM = 1 / 8000;

function uprightSlice(ground: ZoneGround, x: number, inward: 1 | -1): Interval[] {
  return sliceVertical(ground.region, x + inward * INSIDE_MM);
}

function commonStretches(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  return a.flatMap(([from, to]) =>
    b
      .map((other): Interval => [snap(Math.max(from, other[0])), snap(Math.min(to, other[1]))])
      .filter(([low, high]) => high > low),
  );
}
