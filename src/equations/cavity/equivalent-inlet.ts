/** The inlet that bottom, top and joints of a cavity make together; swap bottom and top for the outlet. */
import { equation } from "../equation.ts";

export interface CavityOpenings {
  /** Opening at this end, per metre of wall (m). */
  readonly nearM: number;
  /** Opening at the other end, per metre of wall (m). */
  readonly farM: number;
  /** Open joints between, per metre of wall (m). */
  readonly jointsM: number;
}

/** Equivalent opening (m per m of wall). */
export function equivalentInlet({ nearM, farM, jointsM }: CavityOpenings): number {
  return nearM + (farM / (2 * (nearM + farM))) * jointsM;
}

export const EQUIVALENT_INLET = equation({
  name: "equivalent-inlet",
  formula: "nearM + farM/(2·(nearM + farM))·jointsM",
  inputs: [
    { key: "nearM", unit: "m", range: [1e-6, 1] },
    { key: "farM", unit: "m", range: [0, 1] },
    { key: "jointsM", unit: "m", range: [0, 5] },
  ],
  result: { unit: "m" },
  source: {
    document: "ISO 15099, ventilated gap, as written out in an open building-energy reference manual",
  },
  work: equivalentInlet,
});
