/**
 * Regions with holes, in millimetres, and what polygons have in common. Booleans are done by clipper-lib on the integer
 * grid of 1/8000 mm, so that a result's corners lie on the grid that lengths are snapped to. Every other room reaches the
 * library through this file alone.
 */
import ClipperLib from "clipper-lib";
import { snap } from "../units/length.ts";
import type { Point } from "./point.ts";
import { counterClockwise, type Polygon, polygonBounds, signedArea } from "./polygon.ts";
import { commonRect, type Rect, rectOutline } from "./rect.ts";

/** An outline (counter-clockwise) with the holes inside it (clockwise). */
export interface Region {
  readonly outline: Polygon;
  readonly holes: readonly Polygon[];
}

const UNITS_PER_MM = 8000;

/** Net area of a region, its holes taken out (mm²). */
export function regionArea(region: Region): number {
  return region.holes.reduce(
    (area, hole) => area - Math.abs(signedArea(hole)),
    Math.abs(signedArea(region.outline)),
  );
}

/** The parts of the subject inside the clip. */
export function intersect(subject: Polygon, clip: Polygon): Region[] {
  // Most of what is cut here are rectangles, whose common part is told without the library.
  if (isBox(subject) && isBox(clip)) {
    const both = commonRect(onGrid(polygonBounds(subject)), onGrid(polygonBounds(clip)));
    return both ? [{ outline: rectOutline(both), holes: [] }] : [];
  }
  return run(ClipperLib.ClipType.ctIntersection, [subject], [clip]);
}

/** The parts of the subject outside every clip. */
export function subtract(subject: Polygon | Region, clips: readonly Polygon[]): Region[] {
  const subjects = "outline" in subject ? [subject.outline, ...subject.holes] : [subject];
  if (clips.length === 0) return run(ClipperLib.ClipType.ctUnion, subjects, []);
  return run(ClipperLib.ClipType.ctDifference, subjects, clips);
}

/** What any of the polygons covers. */
export function union(polygons: readonly Polygon[]): Region[] {
  return run(ClipperLib.ClipType.ctUnion, [], polygons);
}

function run(kind: number, subjects: readonly Polygon[], clips: readonly Polygon[]): Region[] {
  const clipper = new ClipperLib.Clipper();
  for (const polygon of subjects) clipper.AddPath(toPath(polygon), ClipperLib.PolyType.ptSubject, true);
  for (const polygon of clips) {
    clipper.AddPath(toPath(counterClockwise(polygon)), ClipperLib.PolyType.ptClip, true);
  }
  const tree = new ClipperLib.PolyTree();
  const fill = ClipperLib.PolyFillType.pftNonZero;
  const subjectFill = subjects.length > 1 ? ClipperLib.PolyFillType.pftEvenOdd : fill;
  clipper.Execute(
    kind,
    tree,
    kind === ClipperLib.ClipType.ctUnion && subjects.length > 1 ? fill : subjectFill,
    fill,
  );
  const regions: Region[] = [];
  const visit = (node: ClipperLib.PolyNode): void => {
    for (const child of node.Childs()) {
      regions.push({
        outline: fromPath(child.Contour()),
        holes: child.Childs().map((hole) => fromPath(hole.Contour())),
      });
      for (const hole of child.Childs()) visit(hole);
    }
  };
  visit(tree);
  return regions.sort(byPlace);
}

/** Left to right, then bottom to top: the library's own order is not part of its contract. */
function byPlace(a: Region, b: Region): number {
  const boxA = polygonBounds(a.outline);
  const boxB = polygonBounds(b.outline);
  return boxA.x[0] - boxB.x[0] || boxA.y[0] - boxB.y[0];
}

/** A rectangle along the axes. */
function isBox(polygon: Polygon): boolean {
  if (polygon.length !== 4) return false;
  const [a, b, c, d] = polygon as readonly [Point, Point, Point, Point];
  const level = a[1] === b[1] && b[0] === c[0] && c[1] === d[1] && d[0] === a[0];
  return level || (a[0] === b[0] && b[1] === c[1] && c[0] === d[0] && d[1] === a[1]);
}

function onGrid({ x, y }: Rect): Rect {
  return { x: [snap(x[0]), snap(x[1])], y: [snap(y[0]), snap(y[1])] };
}

function toPath(polygon: Polygon): ClipperLib.IntPoint[] {
  return polygon.map(([x, y]) => ({ X: Math.round(x * UNITS_PER_MM), Y: Math.round(y * UNITS_PER_MM) }));
}

/** Starts at the lowest, then leftmost corner, so that equal shapes print alike. */
function fromPath(path: readonly ClipperLib.IntPoint[]): Polygon {
  const points = path.map((p): Point => [snap(p.X / UNITS_PER_MM), snap(p.Y / UNITS_PER_MM)]);
  let start = 0;
  points.forEach((point, i) => {
    const best = points[start] as Point;
    if (point[1] < best[1] || (point[1] === best[1] && point[0] < best[0])) start = i;
  });
  return [...points.slice(start), ...points.slice(0, start)];
}
