/** A slot between two boards or sheets with black edges, as every equation of its light reads it. */

export interface Slot {
  /** Across the slot at the outer face (mm). */
  readonly gapMm: number;
  /** From the outer face to the back (mm). */
  readonly thicknessMm: number;
  /** Slope of the slot's edges, falling outward (degrees). */
  readonly bevelDeg: number;
}

/** Tangent of the edges' slope. */
export function slope({ bevelDeg }: Pick<Slot, "bevelDeg">): number {
  return Math.tan((bevelDeg * Math.PI) / 180);
}

export const SLOT_INPUTS = [
  { key: "gapMm", unit: "mm", range: [0.1, 500] },
  { key: "thicknessMm", unit: "mm", range: [1, 500] },
  { key: "bevelDeg", unit: "°", range: [0, 60] },
] as const;

export const OWN_GEOMETRY = { document: "Own geometry" } as const;
