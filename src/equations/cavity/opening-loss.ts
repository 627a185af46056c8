/** What an opening of the cavity costs in pressure, on the speed in the cavity. */
import { equation } from "../equation.ts";

export interface CavityOpening {
  /** Depth of the cavity: its section per metre of wall (m). */
  readonly cavityM: number;
  /** Clear opening per metre of wall, at most 5/3 of the cavity (m). */
  readonly openingM: number;
  /** 0.66 at the inlet and 0.60 at the outlet in one place of the source, 0.6 for both in another. */
  readonly discharge: number;
}

/** Loss factor on ½ρv². */
export function openingLoss({ cavityM, openingM, discharge }: CavityOpening): number {
  return (cavityM / (discharge * openingM) - 1) ** 2;
}

export const OPENING_LOSS = equation({
  name: "opening-loss",
  formula: "(cavityM/(discharge·openingM) − 1)²",
  inputs: [
    { key: "cavityM", unit: "m", range: [0.001, 0.5] },
    { key: "openingM", unit: "m", range: [1e-5, 0.8] },
    { key: "discharge", unit: "1", range: [0.3, 1] },
  ],
  result: { unit: "1" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: openingLoss,
});
