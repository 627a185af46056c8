/** One search for a part of a facade's cuts, as far as it has come: here, or in another thread that was given the same problem. */
import { lengthPlans } from "../lengths.ts";
import type { LengthRequest, SheetRequest } from "../model.ts";
import { type PileRequest, pilePlans } from "../pile.ts";
import { sheetPlans } from "../sheets.ts";

/** What is searched for, with its effort: plain data. */
export type CutProblem =
  | { readonly kind: "sheets"; readonly request: SheetRequest }
  | { readonly kind: "lengths"; readonly request: LengthRequest }
  | { readonly kind: "pile"; readonly request: PileRequest };

/** Plain data too. What is found is the result of the problem's kind. */
export interface CutState {
  /** From the first, which gives the first plan. The same problem has the same found after as many. */
  readonly steps: number;
  readonly ended: boolean;
  readonly found: unknown;
}

export interface CutSearch {
  readonly problem: CutProblem;
  readonly state: () => CutState;
  /** Searches on for a few milliseconds. */
  readonly advance: () => void;
  /** Takes over what another thread has come to with the same problem; nothing where it is not further than this. */
  readonly hear: (state: CutState) => void;
}

/** Takes the first plan at once. */
export function searchFor(problem: CutProblem): CutSearch {
  const plans = plansOf(problem);
  let walked = 0;
  const step = (): CutState => {
    const { value, done = false } = plans.next();
    walked += 1;
    return { steps: walked, ended: done, found: value };
  };
  let now = step();
  const hear = (state: CutState): void => {
    if (state.steps > now.steps) now = state;
  };
  return { problem, state: () => now, advance: () => hear(step()), hear };
}

function plansOf(problem: CutProblem): Generator<unknown, unknown> {
  switch (problem.kind) {
    case "sheets":
      return sheetPlans(problem.request);
    case "lengths":
      return lengthPlans(problem.request);
    case "pile":
      return pilePlans(problem.request);
  }
}
