/** What the modules of this folder read of one face: its ground, its planes and what lies in front. */
import type { Rect } from "../../geometry/rect.ts";
import type { Face, Project } from "../../project/schema/project.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { snap } from "../../units/length.ts";
import type { FaceEnd, FaceEnds } from "../corners.ts";
import { faceLength, isSlanted } from "../corners.ts";
import { type DraftPiece, wholePiece } from "../draft.ts";
import { NO_HOLES, type Piece, SQUARE_ENDS, type ZonePlane } from "../facade.ts";
import type { RoundKeepOut, ZoneGround } from "../ground-plan.ts";

export interface Wall {
  readonly project: Project;
  readonly face: Face;
  /** The face's path in the project file. */
  readonly path: string;
  readonly ends: FaceEnds;
  readonly grounds: readonly ZoneGround[];
  readonly planes: readonly ZonePlane[];
  readonly rounds: readonly RoundKeepOut[];
  /** Pieces laid out so far. */
  readonly laid: readonly Piece[];
}

export interface Ground {
  readonly ground: ZoneGround;
  readonly plane: ZonePlane;
}

/** The zone that stands at a place along the face, with its plane; undefined over bare wall. */
export function zoneAt({ grounds, planes }: Wall, x: number): Ground | undefined {
  const ground = grounds.find(({ bounds }) => x >= bounds.x[0] && x <= bounds.x[1]);
  const plane = planes.find(({ zone }) => zone === ground?.zone.id);
  return ground && plane ? { ground, plane } : undefined;
}

/** Where what lies `z` out from the sheathing ends at a face's corners: round an outside one, short of an inside one. */
export function reachAt({ face, ends }: Pick<Wall, "face" | "ends">, z: number): readonly [number, number] {
  return [snap(-reach(ends.left, z)), snap(faceLength(face) + reach(ends.right, z))];
}

function reach(end: FaceEnd, z: number): number {
  if (end.kind === "free") return 0;
  if (isSlanted(end)) return z * Math.tan(degreesToRadians(end.cut.angleDeg));
  return end.kind === "external" ? end.neighbourCavityZ : -end.neighbourCavityZ;
}

type Made = Omit<DraftPiece, "holes" | "ends"> &
  Pick<Piece, "massKg" | "removeBefore"> &
  Partial<Pick<Piece, "holes">>;

/** A piece that no screw of the facade holds: rolled out, stuck on, or nailed as its trade does. */
export function looseFrom(made: Made): Piece {
  const { mark, kind, face, outline, holes = NO_HOLES, z, material, cut, why, massKg, removeBefore } = made;
  const draft: { -readonly [Key in keyof DraftPiece]: DraftPiece[Key] } = {
    mark,
    kind,
    face,
    outline,
    holes,
    z,
    ends: SQUARE_ENDS,
    material,
    cut,
    why,
  };
  if (made.zone !== undefined) draft.zone = made.zone;
  if (made.profile !== undefined) draft.profile = made.profile;
  if (made.grain !== undefined) draft.grain = made.grain;
  return wholePiece(draft, { massKg, removeBefore, supports: NOTHING, fixings: NOTHING });
}

const NOTHING: readonly never[] = [];

/** The openings as plain rectangles: functions that the whole set-out leans on stay fast for one shape of argument. */
export function holesOf({ openings }: Face): Rect[] {
  return openings.map(({ x, y }) => ({ x, y }));
}

/** Mass from an area and its weight (kg, to the gram). */
export function massOfArea(lengthMm: number, widthMm: number, kgPerM2: number): number {
  return Math.round(((lengthMm * widthMm) / 1e6) * kgPerM2 * 1000) / 1000;
}
