/**
 * Sheets at the edges of a wall, along its outside corners and free ends, where wind pulls hardest: their screws stand
 * closer where the data sheet gives an edge zone. How wide it is, and how close, are given values.
 */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { SheetCladding } from "../../project/schema/project.ts";
import type { FaceEnds } from "../corners.ts";
import type { DraftPiece } from "../draft.ts";

/** The cladding by whose spacing each sheet is screwed: a sheet that reaches into an edge zone takes its spacing whole. */
export function screwedAs(cladding: SheetCladding, ends: FaceEnds): (piece: DraftPiece) => SheetCladding {
  const { edgeZone } = cladding.dataSheet;
  if (!edgeZone) return () => cladding;
  const { width, fixingSpacing } = edgeZone;
  const zones: Interval[] = [
    ...(ends.left.kind === "internal" ? [] : [[ends.left.x, ends.left.x + width] as const]),
    ...(ends.right.kind === "internal" ? [] : [[ends.right.x - width, ends.right.x] as const]),
  ];
  const closer: SheetCladding = { ...cladding, dataSheet: { ...cladding.dataSheet, fixingSpacing } };
  return ({ outline }) => {
    const { x } = polygonBounds(outline);
    return zones.some((zone) => overlaps(zone, x)) ? closer : cladding;
  };
}
