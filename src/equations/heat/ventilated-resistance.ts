/**
 * A wall’s resistance with a slightly ventilated layer of air, between that of a still and that of a well ventilated
 * one. The openings at which it counts as still and as well ventilated are inputs: codes print their own.
 */
import { equation } from "../equation.ts";

export interface VentilatedWall {
  /** Openings to outside per metre of wall (mm²/m). */
  readonly openingMm2PerM: number;
  /** Openings up to which the layer counts as still: 500 by the standard (mm²/m). */
  readonly stillUpToMm2PerM: number;
  /** Openings from which it counts as well ventilated: 1500 by the standard (mm²/m). */
  readonly openFromMm2PerM: number;
  /** Resistance with the air layer unventilated (m²K/W). */
  readonly stillM2KPerW: number;
  /** Resistance with it well ventilated: nothing outside the layer counts and its inner surface has that of still air (m²K/W). */
  readonly openM2KPerW: number;
}

/** Resistance (m²K/W). */
export function ventilatedResistance({
  openingMm2PerM,
  stillUpToMm2PerM,
  openFromMm2PerM,
  stillM2KPerW,
  openM2KPerW,
}: VentilatedWall): number {
  if (openingMm2PerM >= openFromMm2PerM) return openM2KPerW;
  if (openingMm2PerM <= stillUpToMm2PerM) return stillM2KPerW;
  const openness = (openingMm2PerM - stillUpToMm2PerM) / (openFromMm2PerM - stillUpToMm2PerM);
  return (1 - openness) * stillM2KPerW + openness * openM2KPerW;
}

export const VENTILATED_RESISTANCE = equation({
  name: "ventilated-resistance",
  formula:
    "(1 − p)·stillM2KPerW + p·openM2KPerW, p = (openingMm2PerM − stillUpToMm2PerM)/(openFromMm2PerM − stillUpToMm2PerM) held between 0 and 1",
  inputs: [
    { key: "openingMm2PerM", unit: "mm²/m", range: [0, 1_000_000] },
    { key: "stillUpToMm2PerM", unit: "mm²/m", range: [0, 5000] },
    { key: "openFromMm2PerM", unit: "mm²/m", range: [100, 50_000] },
    { key: "stillM2KPerW", unit: "m²K/W", range: [0, 50] },
    { key: "openM2KPerW", unit: "m²K/W", range: [0, 50] },
  ],
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946, as printed in a Spanish code text", clause: "Air layers" },
  work: ventilatedResistance,
});
