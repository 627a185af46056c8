/** The cutting of a facade on its way: a whole plan at once, then better ones, and last the one that `cutFacade` gives. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type CutOutcome, cutFacade } from "./cut-facade.ts";
import { type CutMemo, createCutMemo } from "./cut-memo.ts";

/** Makes the plan of what has been found so far; the verifiers pass it as they pass the last. */
export type PlanSoFar = () => CutOutcome;

/**
 * Gives the plan so far every few milliseconds, the same function until there is a better one or a higher bound: who has seen enough
 * stops asking, and who does not want them all leaves some unmade. The last is what `cutFacade` returns.
 *
 * @param memo goes on from what earlier cuttings have searched, as after an edit
 */
export function* facadePlans(
  project: Project,
  facade: Facade,
  memo: CutMemo = createCutMemo(),
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
    const open = asked().filter((search) => !search.ended());
    if (open.length === 0) return outcome;
    yield plan;
    for (const search of open) {
      let better = false;
      while (!search.ended()) {
        if (search.advance()) {
          better = true;
          plan = soFar();
        }
        yield plan;
      }
      if (better && search.leads) break;
    }
  }
}
