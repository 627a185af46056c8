/**
 * Triangles and edges of prisms in a face's frame, as plain numbers: what the scene hands to the graphics library. Corners
 * are not shared between triangles, so that every side keeps its own flat light.
 */
import { ShapeUtils, Vector2 } from "three";
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { Piece } from "../../setout/facade.ts";
import { degreesToRadians } from "../../units/angle.ts";

type Corner = readonly [x: number, y: number, z: number];

/** Lists of coordinates, three to a point (mm, face frame). */
export interface Mesh {
  /** Three points to a triangle, counter-clockwise seen from outside. */
  readonly triangles: readonly number[];
  /** Two points to an edge. */
  readonly edges: readonly number[];
}

export interface Prism {
  /** At the front, counter-clockwise. */
  readonly outline: Polygon;
  /** Clockwise. */
  readonly holes: readonly Polygon[];
  readonly z: Interval;
  /** Where a point of the front lies at the back; straight behind unless told. */
  readonly behind?: (point: Point) => Point;
}

/** A prism, or where its depth is nothing its front alone. */
export function prismMesh({ outline, holes, z: [back, front], behind = (point) => point }: Prism): Mesh {
  const triangles: number[] = [];
  const edges: number[] = [];
  const deep = front > back;
  const rings = [outline, ...holes];
  const points = rings.flat();
  const flat = rings.map((ring) => ring.map(([x, y]) => new Vector2(x, y)));
  const fronts = points.map(([x, y]): Corner => [x, y, front]);
  const backs = points.map((point): Corner => [...behind(point), back]);
  for (const [a, b, c] of ShapeUtils.triangulateShape(flat[0] ?? [], flat.slice(1)) as [
    number,
    number,
    number,
  ][]) {
    triangles.push(...at(fronts, a), ...at(fronts, b), ...at(fronts, c));
    if (deep) triangles.push(...at(backs, a), ...at(backs, c), ...at(backs, b));
  }
  let first = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [first + i, first + ((i + 1) % ring.length)];
      edges.push(...at(fronts, a), ...at(fronts, b));
      if (!deep) continue;
      edges.push(...at(backs, a), ...at(backs, b), ...at(fronts, a), ...at(backs, a));
      triangles.push(...at(backs, a), ...at(backs, b), ...at(fronts, b));
      triangles.push(...at(backs, a), ...at(fronts, b), ...at(fronts, a));
    }
    first += ring.length;
  }
  return { triangles, edges };
}

/** Thin metal or membrane: its section swept from one end to the other, without thickness. */
function bentMesh(from: readonly Corner[], to: readonly Corner[]): Mesh {
  const triangles: number[] = [];
  const edges: number[] = [];
  for (const [i, start] of from.entries()) {
    const end = at(to, i);
    edges.push(...start, ...end);
    const [next, nextEnd] = [from[i + 1], to[i + 1]];
    if (!next || !nextEnd) continue;
    triangles.push(...start, ...next, ...nextEnd, ...start, ...nextEnd, ...end);
    edges.push(...start, ...next, ...end, ...nextEnd);
  }
  return { triangles, edges };
}

/** A dam stands across the section that it closes. */
function damMesh({ x, outline }: NonNullable<Piece["dams"]>[number]): Mesh {
  const corners = outline.map(([pz, py]): Corner => [x, py, pz]);
  const triangles: number[] = [];
  const edges: number[] = [];
  for (const [i, corner] of corners.entries()) {
    const next = at(corners, (i + 1) % corners.length);
    edges.push(...corner, ...next);
    if (i > 0 && i + 1 < corners.length) triangles.push(...at(corners, 0), ...corner, ...next);
  }
  return { triangles, edges };
}

function joined(meshes: readonly Mesh[]): Mesh {
  return {
    triangles: meshes.flatMap(({ triangles }) => triangles),
    edges: meshes.flatMap(({ edges }) => edges),
  };
}

/** A membrane without thickness is drawn before what it lies on, mm. */
const BEFORE = 0.5;

/** A piece as it is cut: its edges bevelled, its ends mitred. */
export function pieceMesh(piece: Piece): Mesh {
  const { outline, holes, z, ends, profile, planProfile, dams = [], bevelDeg = 0 } = piece;
  const { x, y } = polygonBounds(outline);
  if (profile) {
    const sectionAt = (px: number): Corner[] => profile.map(([pz, py]) => [px, py, pz]);
    return joined([bentMesh(sectionAt(x[0]), sectionAt(x[1])), ...dams.map(damMesh)]);
  }
  if (planProfile) {
    const sectionAt = (py: number): Corner[] => planProfile.map(([px, pz]) => [px, py, pz]);
    return bentMesh(sectionAt(y[0]), sectionAt(y[1]));
  }
  const depth = z[1] - z[0];
  if (depth === 0) return prismMesh({ outline, holes, z: [z[0] + BEFORE, z[1] + BEFORE] });
  const rise = depth * Math.tan(degreesToRadians(bevelDeg));
  const left = depth * Math.tan(degreesToRadians(ends.left.angleDeg));
  const right = depth * Math.tan(degreesToRadians(ends.right.angleDeg));
  return prismMesh({
    outline,
    holes,
    z,
    behind: ([px, py]) => [px + (px === x[0] ? left : px === x[1] ? -right : 0), py + rise],
  });
}

function at(points: readonly Corner[], index: number): Corner {
  return points[index] as Corner;
}
