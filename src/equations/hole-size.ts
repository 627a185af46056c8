/** The hole in which a sheet can move round a screw that stands at its middle. */
import { equation } from "./equation.ts";

export interface SlidingHole {
  readonly shankMm: number;
  /** Distance from the fixed point (mm). */
  readonly fromFixedPointMm: number;
  readonly expansionPerK: number;
  /** Largest change of temperature either way from that at fixing (K). */
  readonly temperatureChangeK: number;
  /** Largest change of length by moisture either way from that at fixing (mm per m). */
  readonly moistureMmPerM: number;
}

/** Least diameter of the hole (mm). */
export function holeSize(hole: SlidingHole): number {
  const movement = hole.expansionPerK * hole.temperatureChangeK + hole.moistureMmPerM / 1000;
  return hole.shankMm + 2 * movement * hole.fromFixedPointMm;
}

export const HOLE_SIZE = equation({
  name: "hole-size",
  formula: "shankMm + 2 · (expansionPerK · temperatureChangeK + moistureMmPerM/1000) · fromFixedPointMm",
  inputs: [
    { key: "shankMm", unit: "mm", range: [1, 20] },
    { key: "fromFixedPointMm", unit: "mm", range: [0, 10_000] },
    { key: "expansionPerK", unit: "1/K", range: [0, 0.0001] },
    { key: "temperatureChangeK", unit: "K", range: [0, 150] },
    { key: "moistureMmPerM", unit: "mm/m", range: [0, 10] },
  ],
  result: { unit: "mm" },
  source: { document: "Own geometry: a screw in the middle of its hole, moved both ways" },
  work: holeSize,
});
