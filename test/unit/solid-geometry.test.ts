/** The axonometric view's pieces: where they lie, what they hold, and that nothing of the facade is left out. */
import polygonClipping, { type Pair } from "polygon-clipping";
import { describe, expect, it } from "vitest";
import type { Polygon } from "../../src/geometry/polygon.ts";
import type { Piece } from "../../src/setout/facade.ts";
import { layerOfPiece } from "../../src/web/drawing/layers.ts";
import { type Mesh, pieceMesh } from "../../src/web/solid/mesh.ts";
import { placed, standing, type Vector } from "../../src/web/solid/placing.ts";
import { headsOn, shapesOn } from "../../src/web/solid/shapes.ts";
import { boxOf } from "../helpers/piece-boxes.ts";
import { solidDemo } from "../helpers/solid-demo.ts";

const { facade } = solidDemo;
const pieces = facade.faces.flatMap((face) => face.pieces);
const straight = pieces.filter(({ profile, planProfile, z }) => !profile && !planProfile && z[1] > z[0]);

const pointsOf = (numbers: readonly number[]): Vector[] =>
  Array.from({ length: numbers.length / 3 }, (_, i) => [
    numbers[3 * i]!,
    numbers[3 * i + 1]!,
    numbers[3 * i + 2]!,
  ]);

const span = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];

const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

/** By the theorem of divergence: what closed triangles enclose (mm³). */
function volumeOf({ triangles }: Mesh): number {
  const points = pointsOf(triangles);
  let six = 0;
  for (let i = 0; i < points.length; i += 3) {
    const [a, b, c] = [points[i]!, points[i + 1]!, points[i + 2]!];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]);
    six += a[1] * (b[2] * c[0] - b[0] * c[2]);
    six += a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** Twice the triangles' areas as vectors, summed: nothing where they close. */
function openness({ triangles }: Mesh): number {
  const points = pointsOf(triangles);
  const sum = [0, 0, 0];
  for (let i = 0; i < points.length; i += 3) {
    const [a, b, c] = [points[i]!, points[i + 1]!, points[i + 2]!];
    const [u, v] = [b.map((one, k) => one - a[k]!), c.map((one, k) => one - a[k]!)] as [number[], number[]];
    for (const k of [0, 1, 2])
      sum[k]! += u[(k + 1) % 3]! * v[(k + 2) % 3]! - u[(k + 2) % 3]! * v[(k + 1) % 3]!;
  }
  return Math.hypot(...sum);
}

const shoelace = (ring: readonly Pair[]): number =>
  Math.abs(
    ring.reduce(
      (sum, [x, y], i) => sum + x * ring[(i + 1) % ring.length]![1] - ring[(i + 1) % ring.length]![0] * y,
      0,
    ),
  ) / 2;

/** The outline less its holes, by the library that the program does not use (mm²). */
function areaOf({ outline, holes }: Piece): number {
  const ring = (polygon: Polygon): Pair[][] => [polygon.map(([x, y]): Pair => [x, y])];
  const left = polygonClipping.difference([ring(outline)], ...holes.map((hole) => [ring(hole)]));
  return left.reduce(
    (sum, [outer = [], ...inner]) =>
      sum + shoelace(outer) - inner.reduce((taken, one) => taken + shoelace(one), 0),
    0,
  );
}

const isSquare = ({ ends }: Piece): boolean => ends.left.angleDeg === 0 && ends.right.angleDeg === 0;

describe("pieces of the demo in the axonometric view", () => {
  it("fill their outlines at the front, and their depth", () => {
    expect(straight.length).toBeGreaterThan(500);
    for (const piece of straight) {
      const points = pointsOf(pieceMesh(piece).triangles);
      const front = points.filter(([, , z]) => z === piece.z[1]);
      const [left, right, bottom, top] = boxOf(piece.outline);
      expect([piece.mark, span(front.map(([x]) => x))]).toEqual([piece.mark, [left, right]]);
      expect([piece.mark, span(front.map(([, y]) => y))]).toEqual([piece.mark, [bottom, top]]);
      expect([piece.mark, span(points.map(([, , z]) => z))]).toEqual([piece.mark, [...piece.z]]);
    }
  });

  it("close, and hold their area times their depth where their ends are square", () => {
    const square = straight.filter(isSquare);
    expect(square.some(({ holes }) => holes.length > 0)).toBe(true);
    expect(square.some(({ bevelDeg }) => bevelDeg !== undefined && bevelDeg > 0)).toBe(true);
    for (const piece of square) {
      const mesh = pieceMesh(piece);
      expect(openness(mesh)).toBeLessThan(1e-3);
      const asked = areaOf(piece) * (piece.z[1] - piece.z[0]);
      expect(Math.abs(volumeOf(mesh) / asked - 1)).toBeLessThan(1e-6);
    }
  });

  it("lose at a mitre half of what a square end would hold there", () => {
    const mitred = straight.filter((piece) => !isSquare(piece) && piece.outline.length === 4);
    expect(mitred.length).toBeGreaterThan(20);
    for (const piece of mitred) {
      const [left, right, bottom, top] = boxOf(piece.outline);
      const depth = piece.z[1] - piece.z[0];
      // A raked top is no rectangle.
      if (Math.abs(areaOf(piece) - (right - left) * (top - bottom)) > 1) continue;
      const off = (depth * (tan(piece.ends.left.angleDeg) + tan(piece.ends.right.angleDeg))) / 2;
      const asked = (right - left - off) * (top - bottom) * depth;
      expect(openness(pieceMesh(piece))).toBeLessThan(1e-3);
      expect(Math.abs(volumeOf(pieceMesh(piece)) / asked - 1)).toBeLessThan(1e-6);
    }
  });

  it("are bent as their sections are", () => {
    const bent = pieces.filter(({ profile }) => profile);
    expect(bent.length).toBeGreaterThan(10);
    for (const { profile, dams = [], ...piece } of bent) {
      const points = pointsOf(pieceMesh({ ...piece, ...(profile && { profile }), dams }).triangles);
      const [left, right] = boxOf(piece.outline);
      const section = [...profile!, ...dams.flatMap(({ outline }) => outline)];
      expect(span(points.map(([x]) => x))).toEqual([left, right]);
      expect(span(points.map(([, , z]) => z))).toEqual(span(section.map(([z]) => z)));
      expect(span(points.map(([, y]) => y))).toEqual(span(section.map(([, y]) => y)));
    }
  });

  it("of flashings end in dams that stand 25 mm over the slope, at both ends and nowhere between (Ontario Building Code 9.27.3.8)", () => {
    const dammed = pieces.filter(({ dams }) => dams);
    expect(dammed.length).toBeGreaterThan(5);
    for (const piece of dammed) {
      const [left, right] = boxOf(piece.outline);
      const [, back] = piece.profile!;
      const over = pointsOf(pieceMesh(piece).triangles).filter(
        ([, y, z]) => y > back![1] - (z - back![0]) * 0.06 + 24.9 && z > back![0],
      );
      expect(new Set(over.map(([x]) => x))).toEqual(new Set([left, right]));
    }
  });

  it("that stand upright beside an opening are bent as their sections are, and are as large as their legs", () => {
    const { planProfile: _, profile: __, ...flat } = pieces[0]!;
    // A flange of 15, a leg of 38 back along the battens, 12 across to the jamb, 20 on to the frame; 1400 high.
    const trim: Piece = {
      ...flat,
      outline: [
        [1003, 700],
        [1030, 700],
        [1030, 2100],
        [1003, 2100],
      ],
      holes: [],
      z: [31, 89],
      planProfile: [
        [1003, 89],
        [1018, 89],
        [1018, 51],
        [1030, 51],
        [1030, 31],
      ],
    };
    const { triangles } = pieceMesh(trim);
    const points = pointsOf(triangles);
    expect(span(points.map(([, y]) => y))).toEqual([700, 2100]);
    const section = new Set(points.map(([x, , z]) => `${x} ${z}`));
    expect(section).toEqual(new Set(trim.planProfile?.map(([x, z]) => `${x} ${z}`)));
    let area = 0;
    for (let i = 0; i < points.length; i += 3)
      area += openness({ triangles: points.slice(i, i + 3).flat(), edges: [] }) / 2;
    expect(area).toBeCloseTo((15 + 38 + 12 + 20) * 1400, 3);
  });

  // By hand from the demo's plan: a house of 7200 × 4800 with its first face along X.
  it.each<[face: string, at: (x: number, y: number, z: number) => Vector]>([
    ["front", (x, y, z) => [x, -z, y]],
    ["west", (x, y, z) => [-z, 4800 - x, y]],
    ["east", (x, y, z) => [7200 + z, x, y]],
    ["north", (x, y, z) => [7200 - x, 4800 + z, y]],
    ["east-R1-soffit", (x, y, z) => [7200 - y, 1650 + x, 2250 - z]],
  ])("stand on %s where its outlines say", (id, at) => {
    const face = facade.faces.find((one) => one.id === id)!;
    const placing = standing(face.frame);
    for (const piece of face.pieces.filter((one) => straight.includes(one) && isSquare(one))) {
      const front = pointsOf(pieceMesh(piece).triangles).filter(([, , z]) => z === piece.z[1]);
      const corners = front.map((point) => placed(placing, point));
      const [left, right, bottom, top] = boxOf(piece.outline);
      const asked = [at(left, bottom, piece.z[1]), at(right, top, piece.z[1])];
      for (const axis of [0, 1, 2] as const) {
        const [from, to] = span(corners.map((corner) => corner[axis]));
        const [low, high] = span(asked.map((corner) => corner[axis]));
        expect(from).toBeCloseTo(low, 6);
        expect(to).toBeCloseTo(high, 6);
      }
    }
  });
});

describe("shapes of the axonometric view", () => {
  it("hold every piece, opening and timber of each face, each piece in its layer", () => {
    for (const face of facade.faces) {
      const shapes = shapesOn(face, solidDemo);
      const drawn = new Map(
        shapes.flatMap(({ pick, layer }) => (pick && "id" in pick ? [[pick.id, layer]] : [])),
      );
      for (const { mark, kind } of face.pieces)
        expect([mark, drawn.get(mark)]).toEqual([mark, layerOfPiece(kind)]);
      for (const { id, kind } of face.openings) expect([id, drawn.has(id)]).toEqual([id, kind !== "recess"]);
      expect(shapes.filter(({ layer }) => layer === "framing")).toHaveLength(face.solids.length);
      expect(shapes.some(({ layer }) => layer === "sheathing")).toBe(true);
      const insulated = facade.planes.some(
        (plane) => plane.face === face.id && plane.layers.some(({ kind }) => kind === "insulation"),
      );
      expect(shapes.some(({ layer }) => layer === "insulation")).toBe(insulated);
    }
  });

  it("show a head for every screw that is driven from the front", () => {
    for (const face of facade.faces) {
      const screws = face.pieces.flatMap(({ fixings }) => fixings).filter(({ side }) => !side);
      expect(headsOn(face)).toHaveLength(screws.length);
    }
  });
});
