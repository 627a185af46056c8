/** The pressure loss of a grill or perforated sheet with square edges, on the speed before it. */
import { equation } from "../equation.ts";

export interface SquareEdgedGrill {
  /** Free area over whole area. */
  readonly freeShare: number;
}

/** Loss factor on ½ρv². */
export function grillLoss({ freeShare }: SquareEdgedGrill): number {
  return (0.5 * (1 - freeShare) + (1 - freeShare ** 2)) / freeShare ** 2;
}

export const GRILL_LOSS = equation({
  name: "grill-loss",
  formula: "[0.5·(1 − freeShare) + (1 − freeShare²)] / freeShare²",
  inputs: [{ key: "freeShare", unit: "1", range: [0.05, 1] }],
  result: { unit: "1" },
  source: { document: "Blevins, Applied Fluid Dynamics Handbook (1984), as coded in an open fluids library" },
  work: grillLoss,
});
