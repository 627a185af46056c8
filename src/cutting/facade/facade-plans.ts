/** The cutting of a facade on its way: a whole plan at once, then better ones, and last the one that `cutFacade` gives. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type CutOutcome, cutFacade } from "./cut-facade.ts";
import { type AskedSearch, type CutMemo, createCutMemo } from "./cut-memo.ts";
import type { CutSearch } from "./search.ts";

/** Makes the plan of what has been found so far; the verifiers pass it as they pass the last. */
export type PlanSoFar = () => CutOutcome;

/** Another thread that searches beside this one. What it comes to is told to the search (`hear`) between two plans. */
export interface SecondThread {
  /** Takes it, unless its hands are full. */
  take(search: CutSearch): void;
  /** Whether it is at it, or will be; not once it has ended, or the thread has failed. */
  has(search: CutSearch): boolean;
  /** Called where nothing is left to be done here until it tells something: to ask for the next plan earlier gives the same one. */
  waitFor(): void;
}

const NO_OTHER: SecondThread = { take: () => undefined, has: () => false, waitFor: () => undefined };

/**
 * Gives the plan so far every few milliseconds, the same function until there is a better one or a higher bound: who has seen enough
 * stops asking, and who does not want them all leaves some unmade. The last is what `cutFacade` returns, whoever searched.
 *
 * @param memo goes on from what earlier cuttings have searched, as after an edit
 * @param second is given the pile, or where there is none the last of the lengths, one after another, while the first are searched here
 */
export function* facadePlans(
  project: Project,
  facade: Facade,
  memo: CutMemo = createCutMemo(),
  second: SecondThread = NO_OTHER,
): Generator<PlanSoFar, CutOutcome> {
  const { solvers, asked } = memo.searchesFor(project);
  const soFar = (): PlanSoFar => {
    let made: CutOutcome | undefined;
    return () => {
      made ??= cutFacade(project, facade, solvers);
      return made;
    };
  };
  for (;;) {
    let plan = soFar();
    const outcome = plan();
    const open = asked().filter(({ search }) => !search.state().ended);
    if (open.length === 0) return outcome;
    yield plan;
    for (const sure of asSureAsEachOther(open)) {
      const lead = sure.at(-1);
      const before = lead?.state().found;
      for (const better of searched(sure, second)) {
        if (better) plan = soFar();
        yield plan;
      }
      if (lead?.state().found !== before && open.some(({ search, leads }) => leads && search === lead)) break;
    }
  }
}

/** In their order: what comes behind a search that leads is sure to be asked only when that has ended. */
function asSureAsEachOther(open: readonly AskedSearch[]): CutSearch[][] {
  const sets: CutSearch[][] = [[]];
  for (const { search, leads } of open) {
    sets.at(-1)?.push(search);
    if (leads) sets.push([]);
  }
  return sets.filter((set) => set.length > 0);
}

/** Takes all to their end: the first here, the last in the second thread, until they meet. Gives whether one has found better, now and then. */
function* searched(searches: readonly CutSearch[], second: SecondThread): Generator<boolean> {
  const found = () => searches.map((search) => search.state().found);
  const ended = (search: CutSearch): boolean => search.state().ended;
  let before = found();
  while (!searches.every(ended)) {
    const free = () => searches.filter((search) => !ended(search) && !second.has(search));
    for (const search of free().slice(1).reverse()) second.take(search);
    const [here] = free();
    if (here) here.advance();
    else second.waitFor();
    const now = found();
    yield now.some((one, i) => one !== before[i]);
    before = now;
  }
}
