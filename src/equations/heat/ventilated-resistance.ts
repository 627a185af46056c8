/**
 * A wall’s resistance with a slightly ventilated layer of air, between that of a still and that of a well ventilated
 * one.
 */
import { equation } from "../equation.ts";

/** Openings (mm² per m of wall) up to which the layer counts as still, and from which as well ventilated. */
const STILL_UP_TO = 500;
const OPEN_FROM = 1500;

export interface VentilatedWall {
  /** Openings to outside per metre of wall (mm²/m). */
  readonly openingMm2PerM: number;
  /** Resistance with the air layer unventilated (m²K/W). */
  readonly stillM2KPerW: number;
  /** Resistance with it well ventilated: nothing outside the layer counts and its inner surface has that of still air (m²K/W). */
  readonly openM2KPerW: number;
}

/** Resistance (m²K/W). */
export function ventilatedResistance({ openingMm2PerM, stillM2KPerW, openM2KPerW }: VentilatedWall): number {
  const openness = Math.min(1, Math.max(0, (openingMm2PerM - STILL_UP_TO) / (OPEN_FROM - STILL_UP_TO)));
  return (1 - openness) * stillM2KPerW + openness * openM2KPerW;
}

export const VENTILATED_RESISTANCE = equation({
  name: "ventilated-resistance",
  formula:
    "(1500 − A)/1000·stillM2KPerW + (A − 500)/1000·openM2KPerW, A = openingMm2PerM held between 500 and 1500",
  inputs: [
    { key: "openingMm2PerM", unit: "mm²/m", range: [0, 1_000_000] },
    { key: "stillM2KPerW", unit: "m²K/W", range: [0, 50] },
    { key: "openM2KPerW", unit: "m²K/W", range: [0, 50] },
  ],
  result: { unit: "m²K/W" },
  source: { document: "ISO 6946, as printed in a Spanish code text", clause: "Air layers" },
  work: ventilatedResistance,
});
