/** What stands beside an opening, flush with it, for its returns to be screwed to: bucks through insulation, the frame's timber. */
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Piece, Solid } from "../facade.ts";

export type Side = "left" | "right" | "head";

export interface Carrier {
  /** Mark of a buck, or id of a solid. */
  readonly id: string;
  /** Along the side: heights of a jamb, x of a head. */
  readonly along: Interval;
  readonly z: Interval;
  /** Thickness in the way of the screw (mm). */
  readonly thickness: number;
}

/** Carriers of one side, outermost first. */
export function carriersOf(
  side: Side,
  opening: Rect,
  stands: { readonly solids: readonly Solid[]; readonly bucks: readonly Piece[] },
): Carrier[] {
  const carriers: Carrier[] = [];
  for (const { kind, mark, outline, z } of stands.bucks) {
    if (kind === "backing") add(mark, polygonBounds(outline), z);
  }
  for (const solid of stands.solids) {
    if (solid.kind === (side === "head" ? "header" : "trimmer"))
      add(solid.id, polygonBounds(solid.region), solid.z);
  }
  return carriers.sort((a, b) => b.z[1] - a.z[1]);

  function add(id: string, box: Rect, z: Interval): void {
    if (!isBeside(side, opening, box)) return;
    const [along, across] = side === "head" ? [box.x, box.y] : [box.y, box.x];
    carriers.push({ id, along, z, thickness: intervalLength(across) });
  }
}

/** Whether a timber's own side is the opening's: a return lies flat against it. */
function isBeside(side: Side, { x, y }: Rect, box: Rect): boolean {
  if (side === "head") return box.y[0] === y[1] && box.x[0] < x[1] && box.x[1] > x[0];
  const flush = side === "left" ? box.x[1] === x[0] : box.x[0] === x[1];
  return flush && box.y[0] < y[1] && box.y[1] > y[0];
}
