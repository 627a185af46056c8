/** The friction factor of a gap: smooth flow, or rough once that asks more. */
import { equation } from "../equation.ts";

export interface GapFlow {
  /** Reynolds number on twice the depth. */
  readonly reynolds: number;
}

/** Darcy friction factor on the hydraulic diameter, twice the depth. */
export function gapFrictionFactor({ reynolds }: GapFlow): number {
  return Math.max(96 / reynolds, 0.316 / reynolds ** 0.25);
}

export const GAP_FRICTION_FACTOR = equation({
  name: "gap-friction-factor",
  formula: "max(96/reynolds, 0.316/reynolds^0.25)",
  inputs: [{ key: "reynolds", unit: "1", range: [1, 100_000] }],
  result: { unit: "1" },
  source: { document: "Parallel plates, and Blasius’s law, as printed in handbooks of fluid flow" },
  work: gapFrictionFactor,
});
