/** What a screw carries across itself between two pieces of wood in Europe: the least of six ways to fail in single shear. */
import { equation } from "../equation.ts";

export interface ShearedScrew {
  /** Effective diameter of the screw (mm). */
  readonly diameterMm: number;
  /** Yield moment of the screw (N·mm). */
  readonly yieldNmm: number;
  /** Length in the piece under the head (mm). */
  readonly headSideMm: number;
  /** Length in the piece that holds the point (mm). */
  readonly pointSideMm: number;
  /** Embedment strength of the piece under the head (MPa). */
  readonly headSideMPa: number;
  /** Embedment strength of the piece that holds the point (MPa). */
  readonly pointSideMPa: number;
  /** What the screw holds along itself (N); nothing where that is not counted on. */
  readonly pullHeldN: number;
}

/** Characteristic load (N). */
export function enScrewShear({
  diameterMm: d,
  yieldNmm,
  headSideMm: t1,
  pointSideMm: t2,
  headSideMPa: f1,
  pointSideMPa: f2,
  pullHeldN,
}: ShearedScrew): number {
  const beta = f2 / f1;
  const head = f1 * t1 * d;
  const ratio = t2 / t1;
  const turning = Math.sqrt(beta + 2 * beta ** 2 * (1 + ratio + ratio ** 2) + beta ** 3 * ratio ** 2);
  const bending = (length: number, factor: number) => (4 * beta * factor * yieldNmm) / (f1 * d * length ** 2);
  const roped = [
    (head / (1 + beta)) * (turning - beta * (1 + ratio)),
    1.05 * (head / (2 + beta)) * (Math.sqrt(2 * beta * (1 + beta) + bending(t1, 2 + beta)) - beta),
    1.05 *
      ((f1 * t2 * d) / (1 + 2 * beta)) *
      (Math.sqrt(2 * beta ** 2 * (1 + beta) + bending(t2, 1 + 2 * beta)) - beta),
    1.15 * Math.sqrt((2 * beta) / (1 + beta)) * Math.sqrt(2 * yieldNmm * f1 * d),
  ].map((yields) => yields + Math.min(pullHeldN / 4, yields));
  return Math.min(head, f2 * t2 * d, ...roped);
}

export const EN_SCREW_SHEAR = equation({
  name: "en-screw-shear",
  formula:
    "least of (a) to (f) for headSideMm, pointSideMm, headSideMPa, pointSideMPa, diameterMm, yieldNmm; to (c) to (f) a quarter of pullHeldN, at most as much again",
  inputs: [
    { key: "diameterMm", unit: "mm", range: [2, 12] },
    { key: "yieldNmm", unit: "N·mm", range: [500, 200_000] },
    { key: "headSideMm", unit: "mm", range: [3, 200] },
    { key: "pointSideMm", unit: "mm", range: [5, 300] },
    { key: "headSideMPa", unit: "MPa", range: [2, 200] },
    { key: "pointSideMPa", unit: "MPa", range: [2, 200] },
    { key: "pullHeldN", unit: "N", range: [0, 20_000] },
  ],
  result: { unit: "N" },
  source: { document: "EN 1995-1-1, 2004 with A1 and A2", clause: "8.2.2, Equation 8.6" },
  work: enScrewShear,
});
