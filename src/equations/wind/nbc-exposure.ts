/** How terrain and height change the wind’s pressure in Canada: the exposure factor. */
import { equation } from "../equation.ts";

export interface ExposedHeight {
  /** Reference height (m). */
  readonly heightM: number;
  /** 1 open, 0.7 rough. */
  readonly factor: number;
  /** Height at which the factor stands: 10 open, 12 rough (m). */
  readonly referenceM: number;
  /** 0.2 open, 0.3 rough. */
  readonly exponent: number;
  /** 0.9 open, 0.7 rough. */
  readonly least: number;
}

/** Exposure factor. */
export function nbcExposure({ heightM, factor, referenceM, exponent, least }: ExposedHeight): number {
  return Math.max(least, factor * (heightM / referenceM) ** exponent);
}

export const NBC_EXPOSURE = equation({
  name: "nbc-exposure",
  formula: "max(least, factor · (heightM/referenceM)^exponent)",
  inputs: [
    { key: "heightM", unit: "m", range: [0, 200] },
    { key: "factor", unit: "1", range: [0.1, 2] },
    { key: "referenceM", unit: "m", range: [1, 50] },
    { key: "exponent", unit: "1", range: [0.05, 0.9] },
    { key: "least", unit: "1", range: [0.1, 1.5] },
  ],
  result: { unit: "1" },
  source: {
    document: "National Building Code of Canada, 2020, Division B",
    clause: "4.1.7.3.(5), as coded in several public scripts",
  },
  work: nbcExposure,
});
