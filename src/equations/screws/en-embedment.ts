/** What wood bears under a dowel of up to 8 mm, in Europe. */
import { equation } from "../equation.ts";

export interface EmbeddedDowel {
  /** Characteristic, of the wood (kg/m³). */
  readonly densityKgPerM3: number;
  /** Of the dowel; of a screw its effective diameter (mm). */
  readonly diameterMm: number;
  /** 1 in a drilled hole, 0 without. */
  readonly predrilled: number;
}

/** Characteristic embedment strength (MPa). */
export function enEmbedment({ densityKgPerM3, diameterMm, predrilled }: EmbeddedDowel): number {
  return 0.082 * densityKgPerM3 * (predrilled === 1 ? 1 - 0.01 * diameterMm : diameterMm ** -0.3);
}

export const EN_EMBEDMENT = equation({
  name: "en-embedment",
  formula: "0.082 · densityKgPerM3 · (predrilled ? 1 − 0.01·diameterMm : diameterMm^−0.3)",
  inputs: [
    { key: "densityKgPerM3", unit: "kg/m³", range: [200, 900] },
    { key: "diameterMm", unit: "mm", range: [2, 8] },
    { key: "predrilled", unit: "1", range: [0, 1] },
  ],
  result: { unit: "MPa" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.3.1.1, Equations 8.15 and 8.16" },
  work: enEmbedment,
});
