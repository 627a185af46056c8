/**
 * Upright boards are level boards turned a quarter: the same courses, butts and battens, with x and y exchanged. What is
 * laid out in the turned frame is turned back here.
 */
import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import type { Rect } from "../geometry/rect.ts";
import type { DraftBatten } from "./battens.ts";
import type { CladdingPoint } from "./cladding-screws.ts";
import type { FaceEnd, FaceEnds } from "./corners.ts";
import type { DraftPiece } from "./draft.ts";
import { type Joint, SQUARE, SQUARE_ENDS } from "./facade.ts";
import type { KeepOut, ZoneGround } from "./ground-plan.ts";

const turnedPoint = ([x, y]: Point): Point => [y, x];

/** Exchanging the axes turns the outline's sense round; reversing all but the first corner keeps it and its start. */
export function turnedPolygon(polygon: Polygon): Polygon {
  const [first, ...rest] = polygon.map(turnedPoint);
  return first ? [first, ...rest.reverse()] : [];
}

function turnedRect({ x, y }: Rect): Rect {
  return { x: y, y: x };
}

export function turnedGround(ground: ZoneGround): ZoneGround {
  return {
    ...ground,
    region: turnedPolygon(ground.region),
    bounds: turnedRect(ground.bounds),
    keepOuts: ground.keepOuts.map(
      ({ of, opening, rect }): KeepOut => ({
        of,
        opening: turnedRect(opening),
        rect: turnedRect(rect),
        sillLine: rect.x[0],
        headLine: rect.x[1],
      }),
    ),
    rounds: ground.rounds.map((round) => ({
      ...round,
      centre: turnedPoint(round.centre),
      polygon: turnedPolygon(round.polygon),
      bounds: turnedRect(round.bounds),
    })),
  };
}

/** Base and top take the place of the corners: nothing turns there. */
export function endsOfTurned({ bounds }: ZoneGround): FaceEnds {
  const end = (x: number): FaceEnd => ({
    x,
    cut: SQUARE,
    openTo: x,
    kind: "free",
    neighbourInsulation: 0,
    neighbourCavityZ: 0,
    neighbourFreeZ: 0,
  });
  return { left: end(bounds.x[0]), right: end(bounds.x[1]) };
}

export function turnedPiece(piece: DraftPiece): DraftPiece {
  const { bevelDeg: _level, ...upright } = piece;
  return {
    ...upright,
    outline: turnedPolygon(piece.outline),
    holes: piece.holes.map(turnedPolygon),
    ends: SQUARE_ENDS,
    ...(piece.grain && { grain: piece.grain === "x" ? "y" : "x" }),
  };
}

export function turnedBatten(batten: DraftBatten): DraftBatten {
  return { ...batten, ...turnedPiece(batten), x: batten.y, y: batten.x };
}

export function turnedJoint(joint: Joint): Joint {
  return {
    ...joint,
    region: turnedPolygon(joint.region),
    holes: joint.holes.map(turnedPolygon),
    along: joint.along === "x" ? "y" : "x",
  };
}

export function turnedPointOn(
  point: CladdingPoint,
  battens: ReadonlyMap<string, DraftBatten>,
): CladdingPoint {
  return { x: point.y, y: point.x, batten: battens.get(point.batten.mark) ?? point.batten };
}
