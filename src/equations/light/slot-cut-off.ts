/** The profile angle over which no beam passes a slot. */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot, slope } from "./slot.ts";

/** Degrees above level; below 0 not even a level beam passes. */
export function slotCutOff(slot: Slot): number {
  return (Math.atan(slot.gapMm / slot.thicknessMm - slope(slot)) * 180) / Math.PI;
}

export const SLOT_CUT_OFF = equation({
  name: "slot-cut-off",
  formula: "atan(gapMm/thicknessMm − tan bevelDeg)",
  inputs: SLOT_INPUTS,
  result: { unit: "°" },
  source: OWN_GEOMETRY,
  work: slotCutOff,
});
