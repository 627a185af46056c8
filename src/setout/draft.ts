/** Pieces and joints while a face is being laid out, before fixings, supports and weights are known. */
import type { Interval } from "../geometry/interval.ts";
import type { Region } from "../geometry/region.ts";
import type { Joint, Piece } from "./facade.ts";

export type DraftPiece = Omit<Piece, "dams" | "endings" | "fixings" | "supports" | "removeBefore" | "massKg">;

type Held = Pick<Piece, "fixings" | "supports" | "removeBefore" | "massKg">;

/** A draft made whole. Pieces are many: written out, one is made several times as fast as by copying its parts. */
export function wholePiece(draft: DraftPiece, { massKg, supports, removeBefore, fixings }: Held): Piece {
  const { mark, kind, face, outline, holes, z, ends, material, cut, why } = draft;
  const piece: { -readonly [Key in keyof Piece]: Piece[Key] } = {
    mark,
    kind,
    face,
    outline,
    holes,
    z,
    ends,
    material,
    cut,
    massKg,
    why,
    supports,
    removeBefore,
    fixings,
  };
  if (draft.zone !== undefined) piece.zone = draft.zone;
  if (draft.cladding !== undefined) piece.cladding = draft.cladding;
  if (draft.course !== undefined) piece.course = draft.course;
  if (draft.reliefs !== undefined) piece.reliefs = draft.reliefs;
  if (draft.profile !== undefined) piece.profile = draft.profile;
  if (draft.planProfile !== undefined) piece.planProfile = draft.planProfile;
  if (draft.bevelDeg !== undefined) piece.bevelDeg = draft.bevelDeg;
  if (draft.grain !== undefined) piece.grain = draft.grain;
  if (draft.stock !== undefined) piece.stock = draft.stock;
  if (draft.lot !== undefined) piece.lot = draft.lot;
  return piece;
}

/** What a zone's cladding asks of the battens behind it. */
export interface BattenWish {
  /** Strip that a batten must fill. */
  readonly x: Interval;
  readonly reason: "end" | "jamb" | "joint" | "butt" | "middle" | "stud" | "corner" | "post" | "short";
  /** Only this height is asked for; the zone's whole height where absent. */
  readonly y?: Interval;
}

export interface ZoneDraft {
  readonly pieces: readonly DraftPiece[];
  readonly joints: readonly Joint[];
  readonly wishes: readonly BattenWish[];
}

export function jointsOf(regions: readonly Region[], fields: Omit<Joint, "region" | "holes">): Joint[] {
  const { kind, face, zone, width, along, line, why } = fields;
  return regions.map(({ outline, holes }) => {
    const joint: { -readonly [Key in keyof Joint]: Joint[Key] } = {
      kind,
      face,
      width,
      along,
      region: outline,
      holes,
    };
    if (zone !== undefined) joint.zone = zone;
    if (line !== undefined) joint.line = line;
    if (why !== undefined) joint.why = why;
    return joint;
  });
}
