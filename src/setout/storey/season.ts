/** The gap band through the year: the boards swell and shrink, and the gap between them does the opposite. */
import type { Basis } from "../../findings/finding.ts";
import { fromGridSteps, GRID_STEPS_PER_MM, toGridSteps } from "../../units/length.ts";

/** Change of a gap from fixing, in mm per mm of board width, in the wettest and in the driest month; below 0 it closes. */
export interface GapSeason {
  readonly wettestMm: number;
  readonly driestMm: number;
  readonly basis: Basis;
}

/** By how much the gap beside boards of a width closes (0 or below) and opens (0 or above) through the year, in mm. */
export function gapSwing(
  season: GapSeason,
  width: number,
): { readonly closes: number; readonly opens: number } {
  return {
    closes: Math.min(0, season.wettestMm, season.driestMm) * width,
    opens: Math.max(0, season.wettestMm, season.driestMm) * width,
  };
}

/**
 * The gaps at fixing that stay within the band all year beside boards as wide as `widest`, in mm, rounded inward to the grid; nothing
 * where the year moves the gap by more than the band is wide. The gap at fixing itself keeps to the band too.
 */
export function bandThroughYear(at: {
  readonly gapBand: readonly [least: number, most: number];
  readonly widest: number;
  readonly season: GapSeason;
}): readonly [least: number, most: number] | undefined {
  const { closes, opens } = gapSwing(at.season, at.widest);
  // Whole steps taken off each end, so that widening the band by so much widens this one by the same.
  const least = toGridSteps(at.gapBand[0]) + Math.ceil(-closes * GRID_STEPS_PER_MM);
  const most = toGridSteps(at.gapBand[1]) - Math.ceil(opens * GRID_STEPS_PER_MM);
  return least > most ? undefined : [fromGridSteps(least), fromGridSteps(most)];
}
