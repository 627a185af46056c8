/** Searches on for cheaper cuts than the project's own, with ever more steps, as long as someone asks for the next. */
import { MOST_EFFORT, type Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { tidySum } from "../cost.ts";
import { lengthsGoingOn } from "../lengths.ts";
import { pileGoingOn } from "../pile.ts";
import { sheetsGoingOn } from "../sheets.ts";
import { type Closeness, closenessOf } from "./closeness.ts";
import { type CutSolvers, cutFacade } from "./cut-facade.ts";
import { inBatches } from "./in-batches.ts";
import type { CutPlan } from "./plan.ts";

/** What cuts come to that are searched for with so much effort, as `cutting.effort` of the file asks for it. */
export interface Tried extends Closeness {
  readonly effort: number;
  /** Of all tried so far none was cheaper, and this is the least effort that gives it. */
  readonly best: boolean;
  /** Of no part a cheaper plan exists. */
  readonly proven: boolean;
}

/**
 * Twice the effort each time, beginning with the project's own, until no plan can cost less or the most is spent: sheets,
 * lengths and the pile go on from where the effort before left them. A plan that a verifier refuses is left out.
 */
export function* searchOn(project: Project, facade: Facade): Generator<Tried> {
  let best: CutPlan | undefined;
  let bound = 0;
  const solversOf = goingOn(project.cutting?.effort ?? 1);
  for (let effort = project.cutting?.effort ?? 1; effort <= MOST_EFFORT; effort *= 2) {
    const tried = { ...project, cutting: { ...project.cutting, effort } };
    const { plan } = cutFacade(tried, facade, solversOf(effort));
    if (!plan) continue;
    const better = best === undefined || isCheaper(plan, best);
    if (better) best = plan;
    const close = closenessOf(plan);
    bound = Math.max(bound, close.bound);
    const proven = resultsOf(plan).every((one) => one.bound.proven);
    yield { ...close, effort, bound, best: better, proven };
    if (proven) return;
  }
}

/** Our own solvers, effort by effort from the first; what was asked at one effort and is asked again goes on from there. */
function goingOn(first: number): (effort: number) => CutSolvers {
  const most = first * 2 ** Math.floor(Math.log2(MOST_EFFORT / first));
  const kept =
    <Request, Result>(start: (request: Request, most: number) => (effort: number) => Result) =>
    (known: Map<string, (effort: number) => Result>, effort: number) =>
    (request: Request): Result => {
      const key = JSON.stringify(request);
      const search = known.get(key) ?? start(request, most);
      known.set(key, search);
      return search(effort);
    };
  const sheets = new Map<string, ReturnType<typeof sheetsGoingOn>>();
  const lengths = new Map<string, ReturnType<typeof lengthsGoingOn>>();
  const piles = new Map<string, ReturnType<typeof pileGoingOn>>();
  return (effort) => ({
    sheets: kept(sheetsGoingOn)(sheets, effort),
    lengths: inBatches(kept(lengthsGoingOn)(lengths, effort)),
    pile: kept(pileGoingOn)(piles, effort),
  });
}

/** Whether a plan leaves out fewer pieces, or as many and costs less; what has no price counts where the money is the same. */
function isCheaper(one: CutPlan, than: CutPlan): boolean {
  const [of = [], old = []] = [one, than].map((plan) => [
    plan.unplaced.length + plan.boards.toFind.reduce((sum, { pieces }) => sum + pieces.length, 0),
    plan.cost,
    tidySum(resultsOf(plan).map(({ cost }) => cost)),
  ]);
  const at = of.findIndex((value, i) => value !== old[i]);
  return at >= 0 && (of[at] ?? 0) < (old[at] ?? 0);
}

function resultsOf({ sheets, lengths, boards, rips }: CutPlan) {
  return [
    ...[...sheets, ...lengths, ...boards.bought].map(({ result }) => result),
    ...(rips ? [rips.result.lengths] : []),
  ];
}
