/** The lower limit of a wall’s resistance with one bridged layer: each plane has one temperature. */
import { equation } from "../equation.ts";

export interface BridgedLayer {
  /** Surfaces and whole layers together (m²K/W). */
  readonly seriesM2KPerW: number;
  /** The bridged layer through its main material (m²K/W). */
  readonly mainM2KPerW: number;
  /** The same layer through the bridge, such as a stud or batten (m²K/W). */
  readonly bridgeM2KPerW: number;
  /** Area of the bridge over the whole. */
  readonly bridgeShare: number;
}

/** Resistance (m²K/W). */
export function resistanceLower({
  seriesM2KPerW,
  mainM2KPerW,
  bridgeM2KPerW,
  bridgeShare,
}: BridgedLayer): number {
  return seriesM2KPerW + 1 / ((1 - bridgeShare) / mainM2KPerW + bridgeShare / bridgeM2KPerW);
}

/** Shared by the lower and the upper limit. */
export const BRIDGED_LAYER_INPUTS = [
  { key: "seriesM2KPerW", unit: "m²K/W", range: [0, 50] },
  { key: "mainM2KPerW", unit: "m²K/W", range: [0.001, 50] },
  { key: "bridgeM2KPerW", unit: "m²K/W", range: [0.001, 50] },
  { key: "bridgeShare", unit: "1", range: [0, 1] },
] as const;

export const RESISTANCE_LOWER = equation({
  name: "resistance-lower",
  formula: "seriesM2KPerW + 1 / [(1 − bridgeShare)/mainM2KPerW + bridgeShare/bridgeM2KPerW]",
  inputs: BRIDGED_LAYER_INPUTS,
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946", clause: "Lower limit of the total resistance" },
  work: resistanceLower,
});
