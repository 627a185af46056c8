/** Pieces and joints while a face is being laid out, before fixings, supports and weights are known. */
import type { Interval } from "../geometry/interval.ts";
import type { Region } from "../geometry/polygon.ts";
import type { Joint, Piece } from "./facade.ts";

export type DraftPiece = Omit<Piece, "fixings" | "supports" | "removeBefore" | "massKg">;

/** What a zone's cladding asks of the battens behind it. */
export interface BattenWish {
  /** Strip that a batten must fill. */
  readonly x: Interval;
  readonly reason: "end" | "jamb" | "joint" | "butt" | "middle" | "stud" | "corner" | "short";
  /** Only this height is asked for; the zone's whole height where absent. */
  readonly y?: Interval;
}

export interface ZoneDraft {
  readonly pieces: readonly DraftPiece[];
  readonly joints: readonly Joint[];
  readonly wishes: readonly BattenWish[];
}

export function jointsOf(regions: readonly Region[], fields: Omit<Joint, "region" | "holes">): Joint[] {
  return regions.map((region) => ({ ...fields, region: region.outline, holes: region.holes }));
}
