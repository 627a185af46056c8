/** Share of even light on a long slot's front that leaves at its back: the crossed strings. */
import { equation } from "../equation.ts";
import { SLOT_INPUTS, type Slot, slope } from "./slot.ts";

/** 0 to 1, from the whole front, sky and ground alike. */
export function slotExchange(slot: Slot): number {
  const { gapMm: g, thicknessMm: t } = slot;
  const rise = t * slope(slot);
  return (Math.hypot(t, g + rise) + Math.hypot(t, g - rise) - 2 * Math.hypot(t, rise)) / (2 * g);
}

const CROSSED_STRINGS = {
  document: "Hottel's crossed strings, as in Howell's catalogue of radiation view factors",
} as const;

export const SLOT_EXCHANGE = equation({
  name: "slot-exchange",
  formula:
    "[√(thicknessMm² + (gapMm + k)²) + √(thicknessMm² + (gapMm − k)²) − 2√(thicknessMm² + k²)]/(2 · gapMm), k = thicknessMm · tan bevelDeg",
  inputs: SLOT_INPUTS,
  result: { unit: "1" },
  source: CROSSED_STRINGS,
  work: slotExchange,
});
