/**
 * Thin sheet bent to a section: what it is, and the flat width that it is bent from: its legs over their outer corners, less
 * a deduction at each bend.
 *
 * Source: Machinery's Handbook, bending of sheet metal: a bend of A takes A · (r + k · t) along its neutral line, k = 0.407
 * for mild steel and aluminium (0.64 · t + 1.57 · r at a right angle); a leg ends where the outer faces would meet,
 * (r + t) · tan(A / 2) past the bend's beginning.
 */
import type { Point } from "../geometry/point.ts";

/** Steel sheet (mm), and near this thickness, at 7850 kg/m³, its mass by developed area. */
export const BENT_METAL = { thickness: 0.6, kgPerM2: 4.7 } as const;
/** Inner radius of a fold in thin sheet (mm; common practice). */
const FOLD_RADIUS_MM = 1;

/** Place of the neutral line in the thickness, of mild steel and aluminium: 0.64 over a right angle's π / 2. */
export const NEUTRAL_LINE = 0.64 / (Math.PI / 2);

export interface Fold {
  /** Inner radius (mm). */
  readonly radius: number;
  /** Of the sheet (mm). */
  readonly thickness: number;
}

export const USUAL_FOLD: Fold = { radius: FOLD_RADIUS_MM, thickness: BENT_METAL.thickness };

/** What a bend takes from the sum of the legs on its two sides (mm). @param turn from straight on (radians) */
export function bendDeduction(turn: number, { radius, thickness }: Fold): number {
  return 2 * (radius + thickness) * Math.tan(turn / 2) - turn * (radius + NEUTRAL_LINE * thickness);
}

/** @param profile the section's points over its outer corners, in order (mm) */
export function developedWidth(profile: readonly Point[], fold: Fold = USUAL_FOLD): number {
  const legs = profile.slice(1).flatMap(([x, y], i): Point[] => {
    const [fromX, fromY] = profile[i] as Point;
    return x === fromX && y === fromY ? [] : [[x - fromX, y - fromY]];
  });
  const flat = legs.reduce((sum, [dx, dy]) => sum + Math.hypot(dx, dy), 0);
  const bends = legs.slice(1).map((leg, i) => bendDeduction(turnBetween(legs[i] as Point, leg), fold));
  return flat - bends.reduce((sum, one) => sum + one, 0);
}

function turnBetween([ax, ay]: Point, [bx, by]: Point): number {
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}
