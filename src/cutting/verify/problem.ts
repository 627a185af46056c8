/** Something wrong with a cut plan. The code is for programs; the parameters fill a message made elsewhere. */
export interface CutProblem<Code extends string> {
  readonly code: Code;
  /** JSON pointer into the plan. */
  readonly where: string;
  readonly parameters: Readonly<Record<string, string | number>>;
}

/** Half a step of the length grid, mm: what is nearer than this is equal. */
const nearly = 1 / 16000;

export function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= nearly;
}

/** a at most b, to the grid. */
export function atMost(a: number, b: number): boolean {
  return a <= b + nearly;
}

/** What a result says of its plan, to be checked with it. */
export interface Claim {
  readonly cost: number;
  readonly bound: { readonly bound: number; readonly proven: boolean };
}

export type ClaimCode = "cost-wrong" | "bound-above-cost" | "proven-wrong";

/** Checks the stated cost against the cost reckoned here, and that bound and proof go with it. */
export function checkClaim(claim: Claim, cost: number): CutProblem<ClaimCode>[] {
  const problems: CutProblem<ClaimCode>[] = [];
  const close = 1e-5 * Math.max(1, Math.abs(cost));
  if (Math.abs(claim.cost - cost) > close) {
    problems.push({ code: "cost-wrong", where: "/cost", parameters: { stated: claim.cost, found: cost } });
  }
  const bound = claim.bound.bound;
  if (bound > cost + close) {
    problems.push({ code: "bound-above-cost", where: "/bound", parameters: { bound, cost } });
  }
  if (claim.bound.proven && bound < cost - close) {
    problems.push({ code: "proven-wrong", where: "/bound", parameters: { bound, cost } });
  }
  return problems;
}
