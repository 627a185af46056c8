/** The upper limit of a wall’s resistance with one bridged layer: heat keeps to straight paths. */
import { equation } from "../equation.ts";
import { BRIDGED_LAYER_INPUTS, type BridgedLayer } from "./resistance-lower.ts";

/** Resistance (m²K/W). */
export function resistanceUpper({
  seriesM2KPerW,
  mainM2KPerW,
  bridgeM2KPerW,
  bridgeShare,
}: BridgedLayer): number {
  return (
    1 / ((1 - bridgeShare) / (seriesM2KPerW + mainM2KPerW) + bridgeShare / (seriesM2KPerW + bridgeM2KPerW))
  );
}

export const RESISTANCE_UPPER = equation({
  name: "resistance-upper",
  formula:
    "1 / [(1 − bridgeShare)/(seriesM2KPerW + mainM2KPerW) + bridgeShare/(seriesM2KPerW + bridgeM2KPerW)]",
  inputs: BRIDGED_LAYER_INPUTS,
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946", clause: "Upper limit of the total resistance" },
  work: resistanceUpper,
});
