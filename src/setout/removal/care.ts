/** What to take care of while pieces come off: where they hang and their mass. Nothing is sawn, so there is no dust. */
import type { Demands } from "../../codes/demands.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Facade, FaceLayout, Piece } from "../facade.ts";
import type { Removal } from "./reach.ts";

export interface RemovalCare {
  /** Whether a piece ends higher above the lowest ground than work goes unguarded against falls. */
  readonly high: boolean;
  /** Whether they hang under a soffit: drawn screws let them fall. */
  readonly overhead: boolean;
  /** Marks of the pieces that two people handle. */
  readonly heavy: readonly string[];
}

export function careOf(
  facade: Facade,
  { steps }: Removal,
  { onePersonKg, fallHeightMm }: Pick<Demands, "onePersonKg" | "fallHeightMm">,
): RemovalCare {
  const marks = new Set(steps.map(({ mark }) => mark));
  const touched = facade.faces.flatMap((face) => {
    const pieces = face.pieces.filter(({ mark }) => marks.has(mark));
    return pieces.length > 0 ? [{ face, pieces }] : [];
  });
  return {
    high: touched.some(({ face, pieces }) => topOf(face, pieces) - lowOf(facade, face) > fallHeightMm),
    overhead: touched.some(({ face }) => face.frame.level !== undefined),
    heavy: steps.filter(({ massKg }) => massKg > onePersonKg).map(({ mark }) => mark),
  };
}

/** A soffit lies: its y is no height. */
function topOf({ frame }: FaceLayout, pieces: readonly Piece[]): number {
  return frame.level ?? Math.max(...pieces.map(({ outline }) => polygonBounds(outline).y[1]));
}

/** A soffit has no ground line of its own, so the building's lowest ground stands for it. */
function lowOf({ faces }: Facade, face: FaceLayout): number {
  const lines = face.frame.level === undefined ? [face] : faces;
  return Math.min(...lines.flatMap(({ ground }) => ground.map(([, y]) => y)));
}
