/** The upper limit of a wall’s resistance with one bridged layer: heat keeps to straight paths. */
import { equation } from "../equation.ts";

export interface BridgedWall {
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
export function resistanceUpper({
  seriesM2KPerW,
  mainM2KPerW,
  bridgeM2KPerW,
  bridgeShare,
}: BridgedWall): number {
  return (
    1 / ((1 - bridgeShare) / (seriesM2KPerW + mainM2KPerW) + bridgeShare / (seriesM2KPerW + bridgeM2KPerW))
  );
}

export const RESISTANCE_UPPER = equation({
  name: "resistance-upper",
  formula:
    "1 / [(1 − bridgeShare)/(seriesM2KPerW + mainM2KPerW) + bridgeShare/(seriesM2KPerW + bridgeM2KPerW)]",
  inputs: [
    { key: "seriesM2KPerW", unit: "m²K/W", range: [0, 50] },
    { key: "mainM2KPerW", unit: "m²K/W", range: [0.001, 50] },
    { key: "bridgeM2KPerW", unit: "m²K/W", range: [0.001, 50] },
    { key: "bridgeShare", unit: "1", range: [0, 1] },
  ],
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946", clause: "Upper limit of the total resistance" },
  work: resistanceUpper,
});
