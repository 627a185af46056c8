/**
 * Marks: the stable names of pieces. A mark is made of the face's code, a letter for the kind and a number from the
 * piece's own place, so that an edit on another face renumbers nothing.
 */

import { faceCode } from "../project/lookup.ts";
import type { Face } from "../project/schema/project.ts";
import type { PieceKind } from "./facade.ts";

const LETTERS: Readonly<Record<PieceKind, string>> = {
  sheet: "S",
  board: "B",
  batten: "L",
  "counter-batten": "C",
  rail: "R",
  post: "E",
  backing: "K",
  packer: "P",
  closure: "N",
  flashing: "H",
  gasket: "G",
  sleeve: "V",
  membrane: "M",
  return: "T",
};

/** `W-B203a`; the zone's place among the face's zones of its kind comes in front where there are several. */
export function markOf(place: {
  readonly face: Face;
  readonly zone: string;
  readonly kind: PieceKind;
  readonly number: string;
}): string {
  const index = place.face.zones.findIndex(({ id }) => id === place.zone);
  const prefix = place.face.zones.length > 1 ? String(index + 1) : "";
  return `${faceCode(place.face)}${prefix}-${LETTERS[place.kind]}${place.number}`;
}

/** 0 → a, 25 → z, 26 → aa. */
export function letter(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? letter(rest - 1) : "") + String.fromCharCode(97 + (index % 26));
}
