/** A drawing as what a face can be made of: lines on layers, with their handles, in the drawing's own unit. */
import type { Point } from "../../../geometry/point.ts";

export type DrawingUnit = "mm" | "cm" | "dm" | "m" | "in" | "ft";

export const DRAWING_UNITS: readonly DrawingUnit[] = ["mm", "cm", "dm", "m", "in", "ft"];

/** Millimetres in each; exact by definition. */
export const UNIT_MM: Readonly<Record<DrawingUnit, number>> = {
  mm: 1,
  cm: 10,
  dm: 100,
  m: 1000,
  in: 25.4,
  ft: 304.8,
};

/**
 * `closed`: straight from point to point and back to the first. `aside`: nothing that bounds an area, such as a text or a
 * dimension. The others cannot bound a face: an open line, a curve, a line out of the drawing's plane, or a thing of another kind.
 */
export type DrawnKind = "closed" | "aside" | "open" | "curve" | "tilted" | "other";

export interface Drawn {
  readonly layer: string;
  /** As the file names it; with the blocks that it stands in. */
  readonly handle: string;
  /** Its type in the file: LWPOLYLINE, ARC … */
  readonly type: string;
  readonly kind: DrawnKind;
  /** Of a closed line; drawing units, y up. */
  readonly points: readonly Point[];
}

export interface Drawing {
  /** By its name; as the messages say it. */
  readonly name: string;
  /** What its header says that one unit is; undefined where it says nothing. */
  readonly unit: DrawingUnit | undefined;
  readonly drawn: readonly Drawn[];
}

/** A layer with how many closed lines and how many other lines it holds. */
export interface DrawnLayer {
  readonly name: string;
  readonly closed: number;
  readonly others: number;
}

/** Layers that hold lines, those with the most closed ones first. */
export function layersOf({ drawn }: Drawing): DrawnLayer[] {
  const layers = new Map<string, { name: string; closed: number; others: number }>();
  for (const { layer, kind } of drawn) {
    if (kind === "aside") continue;
    const held = layers.get(layer) ?? { name: layer, closed: 0, others: 0 };
    if (kind === "closed") held.closed += 1;
    else held.others += 1;
    layers.set(layer, held);
  }
  return [...layers.values()].sort((a, b) => b.closed - a.closed || (a.name < b.name ? -1 : 1));
}
