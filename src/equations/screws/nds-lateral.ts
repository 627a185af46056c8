/**
 * What a thin screw or nail carries across itself between two pieces of wood, with or without a gap between them: the least of
 * six ways to yield. A gap stands for foam, which bears nothing. At no gap these are the yield modes of the standard.
 */
import { equation } from "../equation.ts";

export interface ShearedDowel {
  /** At the root of the thread (mm). */
  readonly rootMm: number;
  /** Bending yield strength of the dowel (MPa). */
  readonly yieldMPa: number;
  /** Length in the piece under the head (mm). */
  readonly sideMm: number;
  /** Length in the piece that holds the point (mm). */
  readonly mainMm: number;
  /** Between the two (mm). */
  readonly gapMm: number;
  /** Bearing strength of the piece under the head (MPa). */
  readonly sideMPa: number;
  /** Bearing strength of the piece that holds the point (MPa). */
  readonly mainMPa: number;
}

/** Diameter up to which the reduction term stays at 2.2, and that at which the terms of thick dowels begin (in). */
const THIN_IN = 0.17;

/** Allowable load, ten years' duration (N). */
export function ndsLateral({
  rootMm,
  yieldMPa,
  sideMm,
  mainMm,
  gapMm,
  sideMPa,
  mainMPa,
}: ShearedDowel): number {
  const [side, main] = [rootMm * sideMPa, rootMm * mainMPa];
  const bent = (yieldMPa * rootMm ** 3) / 6;
  const [sideShare, mainShare] = [(side * sideMm ** 2) / 4, (main * mainMm ** 2) / 4];
  // Each: whether the dowel turns (4) or yields (2) in the side and in the main piece, its lever, and what resists.
  const yields = [
    loadAt(1 / (4 * side) + 1 / (4 * main), sideMm / 2 + gapMm + mainMm / 2, sideShare + mainShare),
    loadAt(1 / (2 * side) + 1 / (4 * main), gapMm + mainMm / 2, bent + mainShare),
    loadAt(1 / (4 * side) + 1 / (2 * main), sideMm / 2 + gapMm, sideShare + bent),
    loadAt(1 / (2 * side) + 1 / (2 * main), gapMm, 2 * bent),
  ];
  const inch = rootMm / 25.4;
  const reduction = inch <= THIN_IN ? 2.2 : 10 * inch + 0.5;
  return Math.min(side * sideMm, main * mainMm, ...yields) / reduction;
}

function loadAt(square: number, lever: number, resisting: number): number {
  return (Math.sqrt(lever ** 2 + 4 * square * resisting) - lever) / (2 * square);
}

export const NDS_LATERAL = equation({
  name: "nds-lateral",
  formula:
    "least of qs·sideMm, qm·mainMm, (√(B² + 4AC) − B)/2A, over Rd; q = rootMm·MPa of sideMPa, mainMPa; M = yieldMPa·rootMm³/6; II: A = 1/4qs + 1/4qm, B = sideMm/2 + gapMm + mainMm/2, C = (qs·sideMm² + qm·mainMm²)/4; IIIm: A = 1/2qs + 1/4qm, B = gapMm + mainMm/2, C = M + qm·mainMm²/4; IIIs: A = 1/4qs + 1/2qm, B = sideMm/2 + gapMm, C = qs·sideMm²/4 + M; IV: A = 1/2qs + 1/2qm, B = gapMm, C = 2M",
  inputs: [
    { key: "rootMm", unit: "mm", range: [2, 6.34] },
    { key: "yieldMPa", unit: "MPa", range: [100, 1500] },
    { key: "sideMm", unit: "mm", range: [3, 200] },
    { key: "mainMm", unit: "mm", range: [5, 300] },
    { key: "gapMm", unit: "mm", range: [0, 400] },
    { key: "sideMPa", unit: "MPa", range: [2, 200] },
    { key: "mainMPa", unit: "MPa", range: [2, 200] },
  ],
  result: { unit: "N" },
  source: {
    document: "National Design Specification for Wood Construction, American Wood Council, 2018",
    clause:
      "Tables 12.3.1A and 12.3.1B, diameters under 1/4 in; gap after Technical Report 12, General dowel equations",
  },
  work: ndsLateral,
});
