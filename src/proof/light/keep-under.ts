/** Which gap, at each bevel, keeps the membrane's brightest point under a dose. */
import { brightest, type Lit, type SlotBefore } from "./behind-slot.ts";

/** The widest gap at a bevel that keeps the limit; undefined where even the least gap does not. */
export interface GapAtBevel {
  readonly bevelDeg: number;
  readonly widestMm: number | undefined;
}

export interface Wanted {
  /** Most ultraviolet in a year at the brightest point (MJ/m²). */
  readonly mostMJ: number;
  /** Least and most gap that may be chosen (mm). */
  readonly gaps: readonly [least: number, most: number];
  readonly bevelsDeg: readonly number[];
}

/** Gaps are found to this (mm). */
const STEP = 0.1;

/** A wider gap always lets in more, so the widest that keeps the limit is found by halving. */
export function gapsUnder(lit: Lit, slot: SlotBefore, { mostMJ, gaps, bevelsDeg }: Wanted): GapAtBevel[] {
  const board = slot.everyMm - slot.gapMm;
  return bevelsDeg.map((bevelDeg) => {
    const keeps = (steps: number): boolean => {
      const gapMm = steps * STEP;
      const tried = { ...slot, bevelDeg, gapMm, everyMm: board + gapMm };
      return brightest(lit, tried).year.uvMJYear <= mostMJ;
    };
    let low = Math.ceil(gaps[0] / STEP - 1e-9);
    let high = Math.floor(gaps[1] / STEP + 1e-9);
    if (!keeps(low)) return { bevelDeg, widestMm: undefined };
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (keeps(middle)) low = middle;
      else high = middle - 1;
    }
    return { bevelDeg, widestMm: Math.round(low * STEP * 10) / 10 };
  });
}
