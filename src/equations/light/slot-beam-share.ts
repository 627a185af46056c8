/** How much of a beam that meets a slot comes out at its back. */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot, slope } from "./slot.ts";

/** Share of the slot's own area that is lit through, 0 to 1. */
export function slotBeamShare(slot: Slot & { readonly profileDeg: number }): number {
  const across = Math.tan((slot.profileDeg * Math.PI) / 180) + slope(slot);
  return Math.max(0, 1 - (slot.thicknessMm / slot.gapMm) * Math.abs(across));
}

export const SLOT_BEAM_SHARE = equation({
  name: "slot-beam-share",
  formula: "max(0, 1 − thicknessMm/gapMm · |tan profileDeg + tan bevelDeg|)",
  inputs: [...SLOT_INPUTS, { key: "profileDeg", unit: "°", range: [-89, 89] }],
  result: { unit: "1" },
  source: OWN_GEOMETRY,
  work: slotBeamShare,
});
