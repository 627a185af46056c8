/** The part of a level slot's exchange that comes from over the horizon. */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot, slope } from "./slot.ts";

/** A level slot under an overhang, which hides the sky over a profile angle. */
export interface SlotUnderSky extends Slot {
  /** Profile angle up to which the sky is seen (degrees); 90 where nothing stands before it. */
  readonly skyToDeg: number;
}

/** Share of even light on the front, 0 to 0.5. */
export function slotSkyShare(slot: SlotUnderSky): number {
  const ratio = slot.thicknessMm / slot.gapMm;
  const to = Math.min(Math.atan(1 / ratio - slope(slot)), (slot.skyToDeg * Math.PI) / 180);
  if (to <= 0) return 0;
  return ((1 - ratio * slope(slot)) * Math.sin(to) + ratio * (Math.cos(to) - 1)) / 2;
}

export const SLOT_SKY_SHARE = equation({
  name: "slot-sky-share",
  formula:
    "½[(1 − r · tan bevelDeg) · sin p + r · (cos p − 1)], r = thicknessMm/gapMm, p = min(atan(gapMm/thicknessMm − tan bevelDeg), skyToDeg)",
  inputs: [...SLOT_INPUTS, { key: "skyToDeg", unit: "°", range: [0, 90] }],
  result: { unit: "1" },
  source: OWN_GEOMETRY,
  work: slotSkyShare,
});
