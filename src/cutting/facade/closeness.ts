/** How close a plan of the facade is to the best there can be, in one figure over its parts. */
import { tidySum } from "../cost.ts";
import type { CutPlan } from "./plan.ts";

export interface Closeness {
  /** In the stock's currency; square metres of sheets and boards where no stock has a price. */
  readonly costIn: "money" | "m2";
  readonly cost: number;
  /** What no plan costs less than, as far as is known. */
  readonly bound: number;
}

/** Of the parts that are counted in money; where none is, of sheets and of what is ripped from the pile. */
export function closenessOf(plan: CutPlan): Closeness {
  const { sheets, lengths, boards, rips } = plan;
  const priced = [...sheets, ...lengths, ...boards.bought].filter(({ costIn }) => costIn === "money");
  const parts =
    priced.length > 0
      ? priced.map(({ result }) => result)
      : [...sheets.map(({ result }) => result), ...(rips ? [rips.result.lengths] : [])];
  return {
    costIn: priced.length > 0 ? "money" : "m2",
    cost: tidySum(parts.map(({ cost }) => cost)),
    bound: tidySum(parts.map(({ bound }) => bound.bound)),
  };
}
