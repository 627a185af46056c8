/**
 * Battens that stand over bucks. Their screws pass the buck there, not insulation, and they come off before it.
 */
import { polygonBounds, polygonContains } from "../../geometry/polygon.ts";
import { snap } from "../../units/length.ts";
import type { Fixing, Piece } from "../facade.ts";

/** @returns what is laid out so far and what lies behind it, each told of the other */
export function throughBucks(
  laid: readonly Piece[],
  behind: readonly Piece[],
): { readonly laid: readonly Piece[]; readonly behind: readonly Piece[] } {
  const bucks = behind.flatMap((buck) =>
    buck.kind === "backing" ? [{ buck, box: polygonBounds(buck.outline), over: [] as string[] }] : [],
  );
  if (bucks.length === 0) return { laid, behind };
  const passing = laid.map((piece) => {
    if (piece.kind !== "batten") return piece;
    const passed = piece.fixings.map((at) => {
      const found = bucks.find(
        ({ buck, box: { x, y } }) =>
          at.x > x[0] &&
          at.x < x[1] &&
          at.y > y[0] &&
          at.y < y[1] &&
          polygonContains(buck.outline, [at.x, at.y]),
      );
      if (found && !found.over.includes(piece.mark)) found.over.push(piece.mark);
      return found ? pastBuck(at) : at;
    });
    return passed.every((at, i) => at === piece.fixings[i]) ? piece : { ...piece, fixings: passed };
  });
  const over = new Map(bucks.map(({ buck, over: marks }) => [buck.mark, marks]));
  return {
    laid: passing,
    behind: behind.map((piece) => {
      const removeBefore = over.get(piece.mark);
      return removeBefore ? { ...piece, removeBefore } : piece;
    }),
  };
}

/** The body of insulation that a buck stands in, told as the buck. */
function pastBuck(fixing: Fixing): Fixing {
  const first = fixing.through.findIndex(({ what }) => what === "insulation");
  const thickness = fixing.through
    .filter(({ what }) => what === "insulation")
    .reduce((sum, one) => sum + one.thickness, 0);
  const through = fixing.through.flatMap((layer, i) =>
    i === first
      ? [{ what: "backing", thickness: snap(thickness) }]
      : layer.what === "insulation"
        ? []
        : [layer],
  );
  return { ...fixing, through };
}
