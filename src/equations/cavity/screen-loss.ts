/** The pressure loss of a screen of round wires, on the speed before it. */
import { equation } from "../equation.ts";

/** Reynolds number and factor, straight between. */
const FACTORS = [
  [20, 1.3],
  [30, 1.1],
  [40, 0.95],
  [60, 0.83],
  [80, 0.75],
  [100, 0.7],
  [200, 0.6],
  [400, 0.52],
] as const;

export interface RoundWireScreen {
  /** Free area over whole area. */
  readonly freeShare: number;
  /** Reynolds number on the clear opening; outside 20 to 400 the end value holds. */
  readonly reynolds: number;
}

/** Loss factor on ½ρv². */
export function screenLoss({ freeShare, reynolds }: RoundWireScreen): number {
  return (factorAt(reynolds) * (1 - freeShare ** 2)) / freeShare ** 2;
}

function factorAt(reynolds: number): number {
  const above = FACTORS.findIndex(([at]) => at >= reynolds);
  if (above === -1) return FACTORS[FACTORS.length - 1]?.[1] ?? 0;
  const [to, toFactor] = FACTORS[above] ?? [0, 0];
  const [from, fromFactor] = FACTORS[above - 1] ?? [to, toFactor];
  return to === from ? toFactor : fromFactor + ((reynolds - from) / (to - from)) * (toFactor - fromFactor);
}

export const SCREEN_LOSS = equation({
  name: "screen-loss",
  formula: "b(reynolds) · (1 − freeShare²) / freeShare², b from 1.3 at 20 to 0.52 at 400",
  inputs: [
    { key: "freeShare", unit: "1", range: [0.05, 0.8] },
    { key: "reynolds", unit: "1", range: [1, 100_000] },
  ],
  result: { unit: "1" },
  source: { document: "Blevins, Applied Fluid Dynamics Handbook (1984), as coded in an open fluids library" },
  work: screenLoss,
});
