/** Figures of the catalogue and the questions every user of them asks. */
import type { Figure, MonthlyFigure, Quantity, RangeFigure } from "./schema/figure.ts";

export type {
  Basis,
  Figure,
  Jurisdiction,
  MonthlyFigure,
  Quantity,
  RangeFigure,
  Statement,
} from "./schema/figure.ts";

/** Any of the shapes a figure can have. */
export type AnyFigure = Figure | RangeFigure | MonthlyFigure;

/** Whether the source gives a span and not one number. */
export function isRange(quantity: Quantity): quantity is RangeFigure {
  return typeof quantity.value !== "number";
}

/** The smallest value the source allows, in the figure's unit; undefined where that end is open. */
export function lowest(quantity: Quantity): number | undefined {
  return isRange(quantity) ? quantity.value.min : quantity.value;
}

/** The largest value the source allows, in the figure's unit; undefined where that end is open. */
export function highest(quantity: Quantity): number | undefined {
  return isRange(quantity) ? quantity.value.max : quantity.value;
}

/** Whether a result that rests on the figure must read as provisional: remembered or invented, and so unconfirmed. */
export function isUnconfirmed(figure: Pick<AnyFigure, "basis">): boolean {
  return figure.basis === "memory" || figure.basis === "invented";
}
