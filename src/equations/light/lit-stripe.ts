/** Where the stripe of sun that a slot lets through lands on the membrane. */
import { equation } from "../equation.ts";
import { OWN_GEOMETRY, SLOT_INPUTS, type Slot, slope } from "./slot.ts";

export interface SunThroughSlot extends Slot {
  /** From the back of the boards to the membrane (mm). */
  readonly cavityMm: number;
  readonly profileDeg: number;
}

/**
 * Upper edge of the stripe (mm) from the slot's lower edge at the outer face, up positive. Its height is the gap times
 * the share of the beam that passes; where that is nothing there is no stripe.
 */
export function litStripeTop(sun: SunThroughSlot): number {
  const { gapMm, thicknessMm, cavityMm } = sun;
  const fall = Math.tan((sun.profileDeg * Math.PI) / 180);
  return Math.min(gapMm - thicknessMm * fall, thicknessMm * slope(sun) + gapMm) - cavityMm * fall;
}

export const LIT_STRIPE = equation({
  name: "lit-stripe-top",
  formula:
    "min(gapMm − thicknessMm · tan profileDeg, thicknessMm · tan bevelDeg + gapMm) − cavityMm · tan profileDeg",
  inputs: [
    ...SLOT_INPUTS,
    { key: "cavityMm", unit: "mm", range: [0, 500] },
    { key: "profileDeg", unit: "°", range: [-89, 89] },
  ],
  result: { unit: "mm" },
  source: OWN_GEOMETRY,
  work: litStripeTop,
});
