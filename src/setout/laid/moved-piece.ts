/** A piece with its edges moved to where they were laid again. */
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import type { LaidPiece } from "../../project/schema/as-built.ts";
import { snap } from "../../units/length.ts";
import type { DraftPiece } from "../draft.ts";

type Moves = LaidPiece["x"];

/** Undefined where an edge is not where the record has it from: the piece is another one now. */
export function movedPiece(piece: DraftPiece, { x, y }: LaidPiece): DraftPiece | undefined {
  const outline = movedPolygon(piece.outline, x, y);
  const holes = piece.holes.map((hole) => movedHole(hole, x, y));
  if (!outline || holes.some((hole) => !hole)) return undefined;
  const [before, after] = [polygonBounds(piece.outline), polygonBounds(outline)];
  const grown = (axis: "x" | "y"): number =>
    after[axis][1] - after[axis][0] - (before[axis][1] - before[axis][0]);
  const [along, across] = piece.grain === "x" ? (["x", "y"] as const) : (["y", "x"] as const);
  return {
    ...piece,
    outline,
    holes: holes.flatMap((hole) => (hole ? [hole] : [])),
    ...(piece.reliefs && {
      reliefs: piece.reliefs.map((relief) => {
        const [dx, dy] = shiftAt(piece.outline, outline, [relief.x, relief.y]);
        return { ...relief, x: snap(relief.x + dx), y: snap(relief.y + dy) };
      }),
    }),
    cut: {
      length: snap(piece.cut.length + grown(along)),
      width: snap(piece.cut.width + grown(across)),
      thickness: piece.cut.thickness,
    },
  };
}

function to(moves: Moves, at: number): number | undefined {
  return moves.find(([from]) => from === at)?.[1];
}

function movedPolygon(polygon: Polygon, x: Moves, y: Moves): Polygon | undefined {
  const points = polygon.map(([px, py]): readonly [number | undefined, number | undefined] => [
    to(x, px),
    to(y, py),
  ]);
  return points.every((point): point is Point => point[0] !== undefined && point[1] !== undefined)
    ? points
    : undefined;
}

/** A round hole goes with its bounds, which are edges of the record. */
function movedHole(hole: Polygon, x: Moves, y: Moves): Polygon | undefined {
  const box = polygonBounds(hole);
  const [left, low] = [to(x, box.x[0]), to(y, box.y[0])];
  if (left === undefined || low === undefined) return undefined;
  return hole.map(([px, py]): Point => [snap(px + left - box.x[0]), snap(py + low - box.y[0])]);
}

/** How far the corner nearest to a point went. */
function shiftAt(before: Polygon, after: Polygon, [x, y]: Point): Point {
  let [best, shift]: [number, Point] = [Number.POSITIVE_INFINITY, [0, 0]];
  before.forEach(([px, py], i) => {
    const far = Math.hypot(px - x, py - y);
    const [ax, ay] = after[i] as Point;
    if (far < best) [best, shift] = [far, [ax - px, ay - py]];
  });
  return shift;
}
