/** Keeps what was searched for, so that an edit cuts anew only what it asks otherwise: a picture of a board asks nothing. */
import type { Project } from "../../project/schema/project.ts";
import type { CutResult, LengthPlan, LengthRequest, SheetPlan, SheetRequest } from "../model.ts";
import type { PileRequest, PileResult } from "../pile.ts";
import type { CutSolvers } from "./cut-facade.ts";
import { inBatches } from "./in-batches.ts";
import { type CutProblem, type CutSearch, searchFor } from "./search.ts";

export interface AskedSearch {
  readonly search: CutSearch;
  /** What is asked after it may be asked otherwise once it has found better. */
  readonly leads: boolean;
}

export interface CutMemo {
  /** For one cutting of the project. What neither this cutting nor the one before has asked is forgotten. */
  searchesFor(project: Project): CutSearches;
}

export interface CutSearches {
  /** Answer with what has been found so far, the first time with a first plan. */
  readonly solvers: CutSolvers;
  /** What the solvers were asked since this was called last, in their order. */
  asked(): readonly AskedSearch[];
}

export function createCutMemo(): CutMemo {
  let before = new Map<string, CutSearch>();
  let now = new Map<string, CutSearch>();
  return {
    searchesFor: ({ cutting: { effort = 1, spoiled = [] } = {} }) => {
      before = now;
      now = new Map();
      const resumes = spoiled.length > 0;
      let asked = new Map<CutSearch, AskedSearch>();
      const kept =
        <Request extends object, Result>(
          problemOf: (request: Request) => CutProblem,
          leads: (request: Request) => boolean,
        ) =>
        (request: Request): Result => {
          const problem = problemOf({ ...request, effort });
          const key = JSON.stringify(problem);
          const search = now.get(key) ?? before.get(key) ?? searchFor(problem);
          now.set(key, search);
          asked.set(search, { search, leads: resumes || leads(request) });
          // Under its own kind a key leads to nothing but that kind's searches.
          return search.state().found as Result;
        };
      return {
        solvers: {
          // Sheets of which there are only so many are shared out in order.
          sheets: kept<SheetRequest, CutResult<SheetPlan>>(
            (request) => ({ kind: "sheets", request }),
            ({ stock }) => stock.some(({ count }) => count !== undefined),
          ),
          lengths: inBatches(
            kept<LengthRequest, CutResult<LengthPlan>>(
              (request) => ({ kind: "lengths", request }),
              () => false,
            ),
          ),
          // What the pile leaves out is bought.
          pile: kept<PileRequest, PileResult>(
            (request) => ({ kind: "pile", request }),
            () => true,
          ),
        },
        asked: () => {
          const list = [...asked.values()];
          asked = new Map();
          return list;
        },
      };
    },
  };
}
