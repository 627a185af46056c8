/** How far walls may be out of flat and square. */

import type { Figure } from "./figure.ts";
import { straightnessFile } from "./files.ts";
import type { FlatnessRow } from "./schema/straightness.ts";

export type { FlatnessRow } from "./schema/straightness.ts";

/** Flatness limits of a surface: `unfinished-wall`, `finished-wall` or `finished-wall-raised`. */
export function flatness(id: string): FlatnessRow | undefined {
  return straightnessFile.flatness.find((entry) => entry.id === id);
}

export function flatnessIds(): string[] {
  return straightnessFile.flatness.map((entry) => entry.id);
}

/**
 * Limit of the gap under a straightedge, in whole millimetres, between two high points `distanceM` metres apart:
 * on a straight line between the printed points, rounded to the nearest millimetre (DIN 18202, Table 3).
 * Undefined for an unknown surface and outside 0.1–15 m, where the table says nothing.
 */
export function flatnessLimitMm(asked: { surface: string; distanceM: number }): number | undefined {
  const points = flatness(asked.surface)?.points ?? [];
  const after = points.findIndex((point) => point.distanceM >= asked.distanceM);
  const to = points[after];
  if (to === undefined) return undefined;
  if (to.distanceM === asked.distanceM) return to.limit.value;
  const from = points[after - 1];
  if (from === undefined) return undefined;
  const share = (asked.distanceM - from.distanceM) / (to.distanceM - from.distanceM);
  return Math.round(from.limit.value + share * (to.limit.value - from.limit.value));
}

/** Limit of an angle's offset for a side of `lengthM` metres; undefined beyond 30 m (DIN 18202, Table 2). */
export function angleLimit(lengthM: number): Figure | undefined {
  return straightnessFile.angles.find((entry) => lengthM <= entry.upToM)?.limit;
}
