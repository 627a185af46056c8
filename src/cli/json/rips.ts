/** The choice of rip widths in its published shape. */
import type { RipChoices } from "../../cutting/facade/rip-choice.ts";
import type { WidthChoice } from "../../cutting/index.ts";
import type { RipsJson } from "../shapes/rips.ts";

export function ripsJson(found: readonly RipChoices[]): RipsJson {
  return {
    schemaVersion: 1,
    rods: found.map(({ lots, curve, best, choices, ...one }) => ({
      ...one,
      lots: [...lots],
      curve: curve.map(yieldJson),
      best: best.map(yieldJson),
      choices: choices.map((choice) => ({
        ...choice,
        widths: [...choice.widths],
        gaps: { ...choice.gaps },
        pieces: choice.pieces.map((one) => ({ ...one })),
        edit: choice.edit.map((step) => ({ ...step })),
      })),
    })),
  };
}

function yieldJson({ widths, yield: part, shares }: WidthChoice) {
  return { widths: [...widths], yield: part, shares: [...shares] };
}
