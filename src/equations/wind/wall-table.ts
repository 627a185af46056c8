/** How a code’s table for walls is laid out. */

import { coefficientByArea } from "./coefficient-by-area.ts";

/** Coefficients up to the small area and from the large one. */
export type ByArea = readonly [small: number, large: number];

export interface WallTable {
  /** By strip, from the end of a wall inward. */
  readonly pull: Readonly<Record<string, ByArea>>;
  readonly push: ByArea;
  readonly areasM2: readonly [small: number, large: number];
}

/** A table’s coefficient for a part that gathers pressure from so much area (m²). */
export function fromTable([smallM2, largeM2]: ByArea, [small, large]: ByArea, areaM2: number): number {
  return coefficientByArea({ areaM2, smallM2, largeM2, smallCoefficient: small, largeCoefficient: large });
}

/** Inputs that stand for a word are 1 for yes and 0 for no. */
export function isYesOrNo(value: number): boolean {
  return value === 0 || value === 1;
}
