/** What to take care of while pieces come off: their height above ground and their mass. Nothing is sawn, so there is no dust. */
import type { Demands } from "../../codes/demands.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Facade } from "../facade.ts";
import type { Removal } from "./reach.ts";

export interface RemovalCare {
  /** Whether a piece ends higher above the face's lowest ground than work goes unguarded against falls. */
  readonly high: boolean;
  /** Marks of the pieces that two people handle. */
  readonly heavy: readonly string[];
}

export function careOf(
  facade: Facade,
  { steps }: Removal,
  { onePersonKg, fallHeightMm }: Pick<Demands, "onePersonKg" | "fallHeightMm">,
): RemovalCare {
  const marks = new Set(steps.map(({ mark }) => mark));
  return {
    high: facade.faces.some(({ ground, pieces }) => {
      const low = Math.min(...ground.map(([, y]) => y));
      return pieces.some(
        ({ mark, outline }) => marks.has(mark) && polygonBounds(outline).y[1] - low > fallHeightMm,
      );
    }),
    heavy: steps.filter(({ massKg }) => massKg > onePersonKg).map(({ mark }) => mark),
  };
}
