/** How high above the ground the cladding of a zone begins. */

import type { Point } from "../geometry/point.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import type { ZoneView } from "./context.ts";

export interface BaseHeight {
  readonly heightMm: number;
  readonly mark: string;
}

/** The lowest place over the ground line, with the piece there; undefined without pieces or ground. */
export function baseHeight({ face, pieces }: ZoneView): BaseHeight | undefined {
  let lowest: BaseHeight | undefined;
  for (const { mark, outline } of pieces) {
    const heightMm = lowestOver(outline, face.ground);
    if (heightMm !== undefined && (lowest === undefined || heightMm < lowest.heightMm))
      lowest = { heightMm, mark };
  }
  return lowest;
}

/**
 * Between the corners of the piece and of the ground line both run straight; where the ground alone has a corner, the
 * piece's lowest edge stands for its edge there, which errs to the safe side.
 */
function lowestOver(outline: readonly Point[], ground: readonly Point[]): number | undefined {
  const { x, y } = polygonBounds(outline);
  let lowest: number | undefined;
  const take = (height: number): void => {
    if (lowest === undefined || height < lowest) lowest = height;
  };
  for (const [cornerX, cornerY] of outline) {
    const level = groundAt(ground, cornerX);
    if (level !== undefined) take(cornerY - level);
  }
  for (const [bendX, bendY] of ground) if (bendX > x[0] && bendX < x[1]) take(y[0] - bendY);
  return lowest;
}

/** The ground line goes on level past its ends: cladding reaches round corners. */
function groundAt(ground: readonly Point[], x: number): number | undefined {
  const [first] = ground;
  const last = ground.at(-1);
  if (!first || !last) return undefined;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  for (let i = 1; i < ground.length; i++) {
    const [a, b] = [ground[i - 1], ground[i]];
    if (a && b && x <= b[0])
      return b[0] === a[0] ? Math.max(a[1], b[1]) : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
  }
  return last[1];
}
