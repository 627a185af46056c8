/** How thin air on high ground lessens the wind’s pressure. */
import { equation } from "../equation.ts";

export interface GroundAltitude {
  /** Ground over the sea (m). */
  readonly altitudeM: number;
}

/** Factor Ke. */
export function asceElevation({ altitudeM }: GroundAltitude): number {
  return Math.exp(-0.000119 * altitudeM);
}

export const ASCE_ELEVATION = equation({
  name: "asce-elevation",
  formula: "exp(−0.000119·altitudeM)",
  inputs: [{ key: "altitudeM", unit: "m", range: [-100, 5000] }],
  result: { unit: "1" },
  source: { document: "ASCE 7-16", clause: "Table 26.9-1, note 2" },
  work: asceElevation,
});
