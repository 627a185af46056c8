/** Prisms and bent metal as triangles: three corners each, counter-clockwise seen from outside, in the frame of a face (mm). */
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { Piece } from "../../setout/facade.ts";
import { degreesToRadians } from "../../units/angle.ts";

export type Corner = readonly [x: number, y: number, z: number];

interface Prism {
  /** At the front, counter-clockwise. */
  readonly outline: Polygon;
  /** Clockwise. */
  readonly holes: readonly Polygon[];
  readonly z: Interval;
  /** Where a point of the front lies at the back. */
  readonly behind?: (point: Point) => Point;
}

export function prismCorners({
  outline,
  holes,
  z: [back, front],
  behind = (point) => point,
}: Prism): Corner[] {
  const corners: Corner[] = [];
  const quad = (a: Corner, b: Corner, c: Corner, d: Corner): void => {
    corners.push(a, b, c, a, c, d);
  };
  const before = ([x, y]: Point): Corner => [x, y, front];
  const after = (point: Point): Corner => [...behind(point), back];
  for (const [a, b, c, d] of trapezoids([outline, ...holes])) {
    quad(before(a), before(b), before(c), before(d));
    if (front > back) quad(after(a), after(d), after(c), after(b));
  }
  if (front > back) {
    for (const ring of [outline, ...holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        quad(after(a), after(b), before(b), before(a));
      });
    }
  }
  return corners;
}

/** An area parted by upright lines through all its corners: between two of them it is trapezoids, lower left first, counter-clockwise. */
function trapezoids(rings: readonly Polygon[]): [Point, Point, Point, Point][] {
  const xs = [...new Set(rings.flat().map(([x]) => x))].sort((a, b) => a - b);
  const edges = rings.flatMap((ring) =>
    ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const),
  );
  const at = ([a, b]: readonly [Point, Point], x: number): number =>
    a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  return xs.slice(1).flatMap((right, i) => {
    const left = xs[i] as number;
    const across = edges
      .filter(([a, b]) => Math.min(a[0], b[0]) <= left && Math.max(a[0], b[0]) >= right)
      .sort((a, b) => at(a, (left + right) / 2) - at(b, (left + right) / 2));
    const found: [Point, Point, Point, Point][] = [];
    for (let k = 0; k + 1 < across.length; k += 2) {
      const [low, high] = [across[k], across[k + 1]] as [readonly [Point, Point], readonly [Point, Point]];
      found.push([
        [left, at(low, left)],
        [right, at(low, right)],
        [right, at(high, right)],
        [left, at(high, left)],
      ]);
    }
    return found;
  });
}

/** A membrane without thickness stands before what it lies on (mm). */
const BEFORE = 0.5;

/** A piece as it is cut: its edges bevelled, its ends mitred; thin metal as a surface. */
export function pieceCorners(piece: Piece): Corner[] {
  const { outline, holes, z, ends, profile, planProfile, bevelDeg = 0 } = piece;
  const { x, y } = polygonBounds(outline);
  if (profile) return swept(profile, (at, [pz, py]) => [at, py, pz], x);
  if (planProfile) return swept(planProfile, (at, [px, pz]) => [px, at, pz], y);
  const depth = z[1] - z[0];
  if (depth === 0) return prismCorners({ outline, holes, z: [z[0] + BEFORE, z[1] + BEFORE] });
  const shift = (degrees: number): number => depth * Math.tan(degreesToRadians(degrees));
  const [rise, left, right] = [shift(bevelDeg), shift(ends.left.angleDeg), shift(ends.right.angleDeg)];
  return prismCorners({
    outline,
    holes,
    z,
    behind: ([px, py]) => [px + (px === x[0] ? left : px === x[1] ? -right : 0), py + rise],
  });
}

function swept(
  section: readonly Point[],
  corner: (at: number, point: Point) => Corner,
  [from, to]: Interval,
): Corner[] {
  return section.slice(1).flatMap((b, i) => {
    const a = section[i] as Point;
    const [near, nearer, far, farther] = [corner(from, a), corner(from, b), corner(to, b), corner(to, a)];
    return [near, nearer, far, near, far, farther];
  });
}
