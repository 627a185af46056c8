/** Factors multiplied: as weak as the weakest of them. */
import type { FigureValue } from "../rule-value.ts";
import { weakest } from "./held.ts";

export function product(...factors: readonly FigureValue[]): FigureValue {
  return {
    value: factors.reduce((sum, { value }) => sum * value, 1),
    basis: weakest(...factors.map(({ basis }) => basis)),
    figures: factors.flatMap(({ figures }) => figures),
  };
}
