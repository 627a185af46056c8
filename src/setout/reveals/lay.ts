/**
 * The returns of one opening: a head return under the head's timber from jamb to jamb, and a jamb return on each side
 * from over the sill to under it. They stand before the frame, and end behind the cladding: its edge stands the jamb
 * clearance beside them, so that an open joint goes round the opening. docs/decisions/0010 says why.
 */
import type { Interval } from "../../geometry/interval.ts";
import { intervalLength } from "../../geometry/interval.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import type { Cladding, Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { type DraftPiece, wholePiece } from "../draft.ts";
import { NO_HOLES, type Piece, SQUARE_ENDS } from "../facade.ts";
import { letter } from "../marks.ts";
import { massOf } from "../masses.ts";
import type { Asked } from "./asked.ts";
import type { Carrier, Side } from "./carriers.ts";
import { fixingsOf, type Place, placesOf } from "./screws.ts";
import { footOf } from "./sill.ts";

/** Between the head return's ends and the timber of the jambs (common practice). */
const HEAD_PLAY_MM = 2;

export interface Stand {
  readonly project: Project;
  readonly movementMmPerM: number;
  readonly asked: Asked;
  readonly carriers: Readonly<Record<Side, readonly Carrier[]>>;
}

/** The pieces of one side; undefined where they find too little timber to be held. */
export function sidePieces(stand: Stand, side: Side): Piece[] | undefined {
  const parts = partsOf(stand, side);
  const pieces: Piece[] = [];
  for (const [i, along] of parts.entries()) {
    const places = placesOf(along, stand.asked, stand.carriers[side]);
    if (!places) return undefined;
    pieces.push(pieceOf(stand, { side, along, places, number: parts.length > 1 ? letter(i) : "" }));
  }
  return pieces.length > 0 ? pieces : undefined;
}

/** A side's length, shared evenly where it is longer than the stock. */
function partsOf({ asked, project }: Stand, side: Side): Interval[] {
  const { opening, cladding, joint } = asked;
  const [from, to] =
    side === "head"
      ? [snap(opening.x[0] + HEAD_PLAY_MM), snap(opening.x[1] - HEAD_PLAY_MM)]
      : [footOf(asked), snap(opening.y[1] - cladding.thickness - joint)];
  if (to <= from) return [];
  const count = Math.ceil((to - from + joint) / (longestOf(project, cladding) + joint) - 1e-9);
  const pitch = (to - from + joint) / count;
  return Array.from(
    { length: count },
    (_, i): Interval => [snap(from + i * pitch), i === count - 1 ? to : snap(from + (i + 1) * pitch - joint)],
  );
}

function longestOf({ stock }: Project, cladding: Cladding): number {
  if (cladding.kind === "boards") return cladding.maxPieceLength;
  const sheets = stock.sheets.filter(({ id }) => cladding.stock.includes(id));
  return Math.max(...sheets.map(({ width, height }) => Math.max(width, height) - 2 * stock.saw.sheetTrim));
}

function pieceOf(
  { project, asked, movementMmPerM }: Stand,
  { side, along, places, number }: { side: Side; along: Interval; places: readonly Place[]; number: string },
): Piece {
  const { opening, cladding, at, z, gap } = asked;
  const { face, zone } = at.ground;
  const { x, y } = opening;
  const t = cladding.thickness;
  const across: Interval =
    side === "left"
      ? [x[0], snap(x[0] + t)]
      : side === "right"
        ? [snap(x[1] - t), x[1]]
        : [snap(y[1] - t), y[1]];
  const level = side === "head";
  const boards = cladding.kind === "boards";
  const draft: DraftPiece = {
    mark: `${faceCode(face)}-T${side[0]}${number}-${opening.id}`,
    kind: "return",
    face: face.id,
    zone: zone.id,
    ...(cladding.id !== zone.cladding && { cladding: cladding.id }),
    outline: rectOutline(level ? { x: along, y: across } : { x: across, y: along }),
    holes: NO_HOLES,
    z,
    ends: SQUARE_ENDS,
    ...(boards && { grain: level ? ("x" as const) : ("y" as const) }),
    material: boards ? cladding.species : cladding.material,
    cut: { length: snap(intervalLength(along)), width: snap(intervalLength(z)), thickness: t },
    why: {
      line: `${face.id} ${level ? "head" : `jamb ${side}`} ${opening.id}`,
      rule: message(`setout.why.return.${level ? "head" : "jamb"}`, { gap }),
    },
  };
  return wholePiece(draft, {
    massKg: massOf(project, draft),
    supports: [...new Set(places.map(({ carrier }) => carrier.id))],
    removeBefore: [],
    fixings: fixingsOf(places, {
      project,
      cladding,
      side,
      across: side === "left" ? across[1] : across[0],
      movementMmPerM,
    }),
  });
}
