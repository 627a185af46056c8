/**
 * How a local pressure coefficient falls as the area that feels it grows: a straight line over the logarithm of
 * the area.
 */
import { equation } from "../equation.ts";

export interface AreaCoefficient {
  /** Area that the part gathers pressure from (m²). */
  readonly areaM2: number;
  /** Up to this area the first coefficient stands (m²). */
  readonly smallM2: number;
  /** From this area the second stands (m²). */
  readonly largeM2: number;
  /** At the small area. */
  readonly smallCoefficient: number;
  /** At the large area. */
  readonly largeCoefficient: number;
}

/** Coefficient. */
export function coefficientByArea({
  areaM2,
  smallM2,
  largeM2,
  smallCoefficient,
  largeCoefficient,
}: AreaCoefficient): number {
  const share = Math.log10(Math.max(areaM2, smallM2) / smallM2) / Math.log10(largeM2 / smallM2);
  return smallCoefficient + (largeCoefficient - smallCoefficient) * Math.min(1, share);
}

export const COEFFICIENT_BY_AREA = equation({
  name: "coefficient-by-area",
  formula:
    "smallCoefficient + (largeCoefficient − smallCoefficient) · min(1, max(0, lg(areaM2/smallM2) / lg(largeM2/smallM2)))",
  inputs: [
    { key: "areaM2", unit: "m²", range: [0, 10000] },
    { key: "smallM2", unit: "m²", range: [0.01, 100] },
    { key: "largeM2", unit: "m²", range: [0.1, 1000] },
    { key: "smallCoefficient", unit: "1", range: [-10, 10] },
    { key: "largeCoefficient", unit: "1", range: [-10, 10] },
  ],
  together: {
    keys: ["smallM2", "largeM2"],
    condition: "smallM2 < largeM2",
    holds: ({ smallM2, largeM2 }) => smallM2 < largeM2,
  },
  result: { unit: "1" },
  source: {
    document: "National Building Code of Canada 2020; ASCE 7; EN 1991-1-4",
    clause: "Figure 4.1.7.6.-B; Figure 30.3-1; Figure 7.2",
  },
  work: coefficientByArea,
});
