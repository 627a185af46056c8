/** A zone's cladding as it was laid again. */
import { type Finding, finding } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { rectContains } from "../../geometry/rect.ts";
import type { LaidPiece } from "../../project/schema/as-built.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { DraftPiece } from "../draft.ts";
import type { Joint } from "../facade.ts";
import type { KeepOut, ZoneGround } from "../ground-plan.ts";
import { movedJoints } from "./moved-joints.ts";
import { movedPiece } from "./moved-piece.ts";

export interface Relaid {
  readonly moves: ReadonlyMap<string, LaidPiece>;
  /** Openings as measured. */
  readonly keepOuts: readonly KeepOut[];
}

interface Clad {
  readonly pieces: readonly DraftPiece[];
  readonly joints: readonly Joint[];
  readonly findings: readonly Finding[];
}

/** The pieces with their edges moved, and the joints between them; pieces that the record does not fit are left and named. */
export function laidAgain(ground: ZoneGround, { moves, keepOuts }: Relaid, draft: Clad): Clad {
  const moved = new Set<string>();
  const unlike: string[] = [];
  const pieces = draft.pieces.map((piece) => {
    const move = moves.get(piece.mark);
    if (!move) return piece;
    const after = movedPiece(piece, move);
    if (after) moved.add(piece.mark);
    else unlike.push(piece.mark);
    return after ?? piece;
  });
  return {
    pieces,
    joints: movedJoints(ground, {
      before: draft.joints,
      drawn: draft.pieces,
      pieces,
      moved,
      keepOuts,
    }),
    findings: [...draft.findings, ...(unlike.length > 0 ? [otherNow(ground, unlike)] : [])],
  };
}

/** Upright boards take their screws along: those past their new edges are left out. */
export function uprightAgain<P extends { readonly x: number; readonly y: number }>(
  ground: ZoneGround,
  relaid: Relaid,
  draft: Omit<Clad, "pieces"> & {
    readonly boards: readonly { readonly piece: DraftPiece; readonly points: readonly P[] }[];
  },
) {
  const { joints, findings } = draft;
  const laid = laidAgain(ground, relaid, {
    pieces: draft.boards.map(({ piece }) => piece),
    joints,
    findings,
  });
  const boards = draft.boards.map(({ piece: before, points }, i) => {
    const piece = laid.pieces[i] ?? before;
    const [was, is] = [polygonBounds(before.outline), polygonBounds(piece.outline)];
    const by = (is.x[0] + is.x[1] - was.x[0] - was.x[1]) / 2;
    return {
      piece,
      points: points
        .map((point): P => ({ ...point, x: snap(point.x + by) }))
        .filter(({ x, y }) => rectContains(is, [x, y])),
    };
  });
  return { boards, joints: laid.joints, findings: laid.findings };
}

function otherNow({ face, zone }: ZoneGround, marks: readonly string[]): Finding {
  return finding({
    code: "S029",
    outcome: "fail",
    where: { path: "/asBuilt/laid", face: face.id, zone: zone.id, marks },
    says: message("setout.laid.other", { face: face.id, count: marks.length }),
    hint: message("setout.laid.other.hint"),
  });
}
