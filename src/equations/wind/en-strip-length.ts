/**
 * The length by which the strips of a wall beside the wind are measured: A a fifth of it, B the rest, C beyond.
 */
import { equation } from "../equation.ts";

export interface WallBesideWind {
  /** Width of the building across the wind (m). */
  readonly crosswindM: number;
  /** Its height (m). */
  readonly heightM: number;
}

/** Length e (m). */
export function enStripLength({ crosswindM, heightM }: WallBesideWind): number {
  return Math.min(crosswindM, 2 * heightM);
}

export const EN_STRIP_LENGTH = equation({
  name: "en-strip-length",
  formula: "min(crosswindM, 2·heightM)",
  inputs: [
    { key: "crosswindM", unit: "m", range: [1, 500] },
    { key: "heightM", unit: "m", range: [1, 200] },
  ],
  result: { unit: "m" },
  source: { document: "EN 1991-1-4, 2005 with A1", clause: "Figure 7.5" },
  work: enStripLength,
});
