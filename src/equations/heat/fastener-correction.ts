/**
 * What metal fasteners through insulation add to a wall’s transmittance. Annex F’s factor of a fastener that passes the
 * whole layer is an input: a maker’s test or a national annex may give another.
 */
import { equation } from "../equation.ts";

export interface FastenersThroughInsulation {
  /** Of a fastener that passes the whole layer: 0.8 by the standard. */
  readonly factor: number;
  /** Of the fastener: 50 carbon steel, 17 stainless (W/mK). */
  readonly conductivityWPerMK: number;
  /** Section of its core (mm²). */
  readonly coreMm2: number;
  /** Fasteners for a square metre (1/m²). */
  readonly perM2: number;
  /** Thickness of the insulation (mm). */
  readonly insulationMm: number;
  /** How far the fastener goes through it: more than its thickness where it stands askew (mm). */
  readonly depthMm: number;
  /** Resistance of the insulation that the fastener passes (m²K/W). */
  readonly insulationM2KPerW: number;
  /** Resistance of the wall without regard to bridges (m²K/W). */
  readonly wholeM2KPerW: number;
}

/** Addition to the transmittance (W/m²K). */
export function fastenerCorrection({
  factor,
  conductivityWPerMK,
  coreMm2,
  perM2,
  insulationMm,
  depthMm,
  insulationM2KPerW,
  wholeM2KPerW,
}: FastenersThroughInsulation): number {
  const passed = factor * Math.min(1, depthMm / insulationMm);
  const perDepth = (passed * conductivityWPerMK * (coreMm2 / 1e6) * perM2) / (depthMm / 1000);
  return perDepth * (insulationM2KPerW / wholeM2KPerW) ** 2;
}

export const FASTENER_CORRECTION = equation({
  name: "fastener-correction",
  formula:
    "factor·min(1, depthMm/insulationMm) · conductivityWPerMK·coreMm2·1e-6·perM2/(depthMm/1000) · (insulationM2KPerW/wholeM2KPerW)²",
  inputs: [
    { key: "factor", unit: "1", range: [0.1, 2] },
    { key: "conductivityWPerMK", unit: "W/mK", range: [0.1, 400] },
    { key: "coreMm2", unit: "mm²", range: [0.1, 2000] },
    { key: "perM2", unit: "1/m²", range: [0, 100] },
    { key: "insulationMm", unit: "mm", range: [1, 1000] },
    { key: "depthMm", unit: "mm", range: [1, 1000] },
    { key: "insulationM2KPerW", unit: "m²K/W", range: [0.01, 50] },
    { key: "wholeM2KPerW", unit: "m²K/W", range: [0.01, 60] },
  ],
  result: { unit: "W/m²K" },
  source: {
    document: "ISO 6946, 2017",
    clause:
      "F.3.2, as coded in two public building-energy tools; with factor 0.8 within 5 % of four calculated anchors",
  },
  work: fastenerCorrection,
});
