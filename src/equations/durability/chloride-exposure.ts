/**
 * Risk of chlorides for stainless steel outdoors: factor F1. The steps are the standard's table; the factor of its last
 * step is an input, for the table itself gives two coasts another.
 */
import { equation } from "../equation.ts";

export interface SaltAround {
  /** Distance from the sea (km). */
  readonly seaKm: number;
  /** Distance from a road salted in winter (km). */
  readonly roadKm: number;
  /** Factor within 0.25 km of the sea: −15, on the North Sea of Germany and the Baltic −10. */
  readonly shoreFactor: number;
}

/** Factor, 0 or less; the nearer of the two governs. */
export function chlorideExposure({ seaKm, roadKm, shoreFactor }: SaltAround): number {
  const bySea = seaKm > 10 ? 0 : seaKm > 1 ? -3 : seaKm > 0.25 ? -7 : shoreFactor;
  const byRoad = roadKm > 0.1 ? 0 : roadKm > 0.01 ? -3 : -7;
  return Math.min(bySea, byRoad);
}

export const CHLORIDE_EXPOSURE = equation({
  name: "chloride-exposure",
  formula: "least of seaKm: >10 0, >1 −3, >0.25 −7, else shoreFactor and roadKm: >0.1 0, >0.01 −3, else −7",
  inputs: [
    { key: "seaKm", unit: "km", range: [0, 10_000] },
    { key: "roadKm", unit: "km", range: [0, 10_000] },
    { key: "shoreFactor", unit: "1", range: [-15, -7] },
  ],
  result: { unit: "1" },
  source: { document: "EN 1993-1-4", clause: "Annex A, Table A.1" },
  work: chlorideExposure,
});
