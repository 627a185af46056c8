/** What stands beside a piece of cladding, across a joint. */
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { FaceLayout, Piece } from "../../../setout/facade.ts";

export type Side = "left" | "right" | "above" | "below";
export const SIDES: readonly Side[] = ["left", "right", "above", "below"];

/** Wider than any joint, narrower than any piece (mm). */
const REACH = 60;

/** Layers of a wall are not beside one another. */
const SKIN: readonly Piece["kind"][] = ["sheet", "board", "post"];
const FRAME: readonly Piece["kind"][] = ["batten", "counter-batten", "rail", "backing"];

/** Marks on each side, from the left or from below. */
export function neighboursOf(face: FaceLayout, piece: Piece): Readonly<Record<Side, readonly string[]>> {
  const layer = [SKIN, FRAME].find((kinds) => kinds.includes(piece.kind)) ?? [piece.kind];
  const own = polygonBounds(piece.outline);
  const others = face.pieces
    .filter(({ kind, mark }) => mark !== piece.mark && layer.includes(kind))
    .map(({ mark, outline }) => ({ mark, ...polygonBounds(outline) }));
  const beside = (side: Side): readonly string[] => {
    const along = side === "left" || side === "right" ? "x" : "y";
    const across = along === "x" ? "y" : "x";
    return others
      .filter((other) => {
        const gap =
          side === "left" || side === "below"
            ? own[along][0] - other[along][1]
            : other[along][0] - own[along][1];
        const shared =
          Math.min(own[across][1], other[across][1]) - Math.max(own[across][0], other[across][0]);
        return gap >= 0 && gap <= REACH && shared > 0;
      })
      .sort((a, b) => a[across][0] - b[across][0])
      .map(({ mark }) => mark);
  };
  return { left: beside("left"), right: beside("right"), above: beside("above"), below: beside("below") };
}
