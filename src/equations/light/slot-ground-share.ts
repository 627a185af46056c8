/** The part of a level slot's exchange that comes from under the horizon. */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot } from "./slot.ts";
import { slotExchange } from "./slot-exchange.ts";
import { slotSkyShare } from "./slot-sky-share.ts";

/** Share of even light on the front, 0 to 1: a bevel that hides the sky leaves this. */
export function slotGroundShare(slot: Slot): number {
  return slotExchange(slot) - slotSkyShare({ ...slot, skyToDeg: 90 });
}

export const SLOT_GROUND_SHARE = equation({
  name: "slot-ground-share",
  formula: "slot-exchange − slot-sky-share, each of gapMm, thicknessMm and bevelDeg",
  inputs: SLOT_INPUTS,
  result: { unit: "1" },
  source: OWN_GEOMETRY,
  work: slotGroundShare,
});
