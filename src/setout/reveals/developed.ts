/**
 * The width of flat metal from which a section is bent: its legs over their outer corners, less a deduction at each bend.
 *
 * Source: Machinery's Handbook, bending of sheet metal: a bend of A takes A · (r + k · t) along its neutral line, k = 0.407
 * for mild steel and aluminium (0.64 · t + 1.57 · r at a right angle); a leg ends where the outer faces would meet,
 * (r + t) · tan(A / 2) past the bend's beginning.
 */

export interface Bend {
  /** How far the leg is turned from straight on (degrees). */
  readonly angleDeg: number;
  /** Inner radius (mm). */
  readonly radius: number;
}

/** Place of the neutral line in the thickness, of mild steel and aluminium: 0.64 over a right angle's π / 2. */
export const NEUTRAL_LINE = 0.64 / (Math.PI / 2);

/** What a bend takes from the sum of the legs on its two sides (mm). */
export function bendDeduction({ angleDeg, radius }: Bend, thickness: number): number {
  const angle = (angleDeg * Math.PI) / 180;
  return 2 * (radius + thickness) * Math.tan(angle / 2) - angle * (radius + NEUTRAL_LINE * thickness);
}

/** @param legs over the outer corners, in order (mm); one bend lies between two of them */
export function developedWidth(legs: readonly number[], bend: Bend, thickness: number): number {
  const flat = legs.reduce((sum, leg) => sum + leg, 0);
  return flat - Math.max(0, legs.length - 1) * bendDeduction(bend, thickness);
}
