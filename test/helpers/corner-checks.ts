/** Pieces of different faces in 3D: what meets at corners, in recesses and under soffits. */
import type { Pair } from "polygon-clipping";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";
import { boxOf, depthShared, LENGTH_NOISE_MM } from "./piece-boxes.ts";

interface Slab {
  readonly face: FaceLayout;
  readonly piece: Piece;
  /** Of the whole piece as a box. */
  readonly plan: readonly Pair[];
  readonly y: readonly [number, number];
}

/** No two pieces of different faces share room: their plans at the corners stay apart, mitred ends included. */
export function cornerProblems(facade: Facade): string[] {
  const slabs = facade.faces.map((face) => ({
    face,
    slabs: face.pieces.map((piece) => slabOf(face, piece)),
  }));
  const problems: string[] = [];
  slabs.forEach((a, i) => {
    for (const b of slabs.slice(i + 1)) {
      for (const one of within(a.slabs, roomOf(b.slabs))) {
        for (const other of within(b.slabs, roomOf([one]))) {
          if (depthShared(one.y, other.y) <= LENGTH_NOISE_MM) continue;
          if (plansOverlap(one.plan, other.plan) && slicesOverlap(one, other))
            problems.push(`${one.piece.mark} lies in ${other.piece.mark}`);
        }
      }
    }
  });
  return problems;
}

type Room = readonly [left: number, right: number, front: number, back: number];

function roomOf(slabs: readonly Slab[]): Room {
  const room: [number, number, number, number] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { plan } of slabs) {
    const [left, right, front, back] = boxOf(plan);
    room[0] = Math.min(room[0], left);
    room[1] = Math.max(room[1], right);
    room[2] = Math.min(room[2], front);
    room[3] = Math.max(room[3], back);
  }
  return room;
}

function within(slabs: readonly Slab[], [left, right, front, back]: Room): Slab[] {
  return slabs.filter(({ plan }) => {
    const box = boxOf(plan);
    return box[0] < right && box[1] > left && box[2] < back && box[3] > front;
  });
}

/** Notched and raked pieces, level by level: at every height where either changes, and between them. */
function slicesOverlap(a: Slab, b: Slab): boolean {
  const [low, high] = [Math.max(a.y[0], b.y[0]), Math.min(a.y[1], b.y[1])];
  const bends = [a, b].flatMap(({ face, piece }) =>
    face.frame.level === undefined ? piece.outline.map(([, y]) => y) : [],
  );
  const steps = [low, high, ...bends.filter((y) => y > low && y < high)].sort((one, other) => one - other);
  const levels = steps.slice(1).flatMap((to, i) => {
    const from = steps[i] as number;
    return to - from <= 2 * LENGTH_NOISE_MM
      ? []
      : [from + LENGTH_NOISE_MM, (from + to) / 2, to - LENGTH_NOISE_MM];
  });
  return levels.some((y) =>
    plansAt(a, y).some((one) => plansAt(b, y).some((other) => plansOverlap(one, other))),
  );
}

function plansAt({ face, piece, plan }: Slab, y: number): (readonly Pair[])[] {
  if (face.frame.level !== undefined) return [plan];
  const crossed = piece.outline
    .flatMap(([ax, ay], i) => {
      const [bx, by] = piece.outline[(i + 1) % piece.outline.length] as Pair;
      return ay > y !== by > y ? [ax + ((y - ay) / (by - ay)) * (bx - ax)] : [];
    })
    .sort((one, other) => one - other);
  return crossed.flatMap((from, i) =>
    i % 2 === 0 ? [planOf(face, piece, [from, crossed[i + 1] as number])] : [],
  );
}

function slabOf(face: FaceLayout, piece: Piece): Slab {
  const [left, right, bottom, top] = boxOf(piece.outline);
  const { level } = face.frame;
  if (level !== undefined)
    return { face, piece, plan: lyingPlan(face, piece), y: [level - piece.z[1], level - piece.z[0]] };
  return { face, piece, plan: planOf(face, piece, [left, right]), y: [bottom, top] };
}

/** A soffit's piece seen from above, as a box: its y runs into the building. */
function lyingPlan({ frame: { origin, along, outward } }: FaceLayout, { outline }: Piece): Pair[] {
  const [left, right, near, far] = boxOf(outline);
  const corners: Pair[] = [
    [left, near],
    [right, near],
    [right, far],
    [left, far],
  ];
  return corners.map(
    ([x, y]): Pair => [origin[0] + along[0] * x - outward[0] * y, origin[1] + along[1] * x - outward[1] * y],
  );
}

/** A stretch of a piece seen from above; the piece's own ends are cut as it says. */
function planOf(face: FaceLayout, piece: Piece, [from, to]: readonly [number, number]): Pair[] {
  const [left, right] = boxOf(piece.outline);
  const [back, front] = piece.z;
  const slope = (angle: number): number => (front - back) * Math.tan((angle * Math.PI) / 180);
  const inFace: Pair[] = [
    [from, front],
    [to, front],
    [to === right ? to - slope(piece.ends.right.angleDeg) : to, back],
    [from === left ? from + slope(piece.ends.left.angleDeg) : from, back],
  ];
  const { origin, along, outward } = face.frame;
  return inFace.map(
    ([x, z]): Pair => [origin[0] + along[0] * x + outward[0] * z, origin[1] + along[1] * x + outward[1] * z],
  );
}

/** Separating axes of two convex plans: they overlap when every axis shows more than the noise. */
function plansOverlap(a: readonly Pair[], b: readonly Pair[]): boolean {
  for (const polygon of [a, b]) {
    for (let i = 0; i < polygon.length; i++) {
      const [px, py] = polygon[i] as Pair;
      const [qx, qy] = polygon[(i + 1) % polygon.length] as Pair;
      const length = Math.hypot(qx - px, qy - py);
      if (length < 1e-9) continue;
      const axis: Pair = [(qy - py) / length, (px - qx) / length];
      const [aMin, aMax] = along(a, axis);
      const [bMin, bMax] = along(b, axis);
      if (Math.min(aMax, bMax) - Math.max(aMin, bMin) <= LENGTH_NOISE_MM) return false;
    }
  }
  return true;
}

function along(polygon: readonly Pair[], axis: Pair): [number, number] {
  const values = polygon.map(([x, y]) => x * axis[0] + y * axis[1]);
  return [Math.min(...values), Math.max(...values)];
}
