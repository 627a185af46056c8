/** Solvers that stop at the first plan that a search gives. */
import type { CutSolvers } from "../../src/cutting/facade/cut-facade.ts";
import { cutPile, lengthPlans, sheetPlans } from "../../src/cutting/index.ts";

function first<Plan>(plans: Generator<Plan, Plan>): Plan {
  return plans.next().value;
}

export const FIRST_PLANS: CutSolvers = {
  sheets: (request) => first(sheetPlans(request)),
  lengths: (request) => first(lengthPlans(request)),
  pile: (request) => cutPile({ ...request, budget: 0 }),
};
