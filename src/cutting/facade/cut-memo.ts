/** Keeps what was searched for, so that an edit cuts anew only what it asks otherwise: a picture of a board asks nothing. */
import type { Project } from "../../project/schema/project.ts";
import { lengthPlans } from "../lengths.ts";
import { pilePlans } from "../pile.ts";
import { sheetPlans } from "../sheets.ts";
import type { CutSolvers } from "./cut-facade.ts";
import { inBatches } from "./in-batches.ts";

/** One search, as far as it has come. */
export interface CutSearch {
  /** What is asked after it may be asked otherwise once it has found better. */
  readonly leads: boolean;
  readonly ended: () => boolean;
  /** Searches on for a few milliseconds. @returns whether it has found better, or raised its bound */
  readonly advance: () => boolean;
}

export interface CutMemo {
  /** For one cutting of the project. What neither this cutting nor the one before has asked is forgotten. */
  searchesFor(project: Project): CutSearches;
}

export interface CutSearches {
  /** Answer with what has been found so far, the first time with a first plan. */
  readonly solvers: CutSolvers;
  /** What the solvers were asked since this was called last, in their order. */
  asked(): readonly CutSearch[];
}

interface Search<Result> extends Omit<CutSearch, "leads"> {
  readonly now: () => Result;
}

export function createCutMemo(): CutMemo {
  let before = new Map<string, Search<unknown>>();
  let now = new Map<string, Search<unknown>>();
  return {
    searchesFor: ({ cutting: { effort = 1, spoiled = [] } = {} }) => {
      before = now;
      now = new Map();
      const resumes = spoiled.length > 0;
      let asked = new Map<unknown, CutSearch>();
      const kept =
        <Request extends object, Result>(
          kind: string,
          plans: (request: Request) => Generator<Result, Result>,
          leads: (request: Request) => boolean,
        ) =>
        (request: Request): Result => {
          const key = JSON.stringify([kind, effort, request]);
          // Under its own kind a key leads to nothing but that kind's searches.
          const known = (now.get(key) ?? before.get(key)) as Search<Result> | undefined;
          const search = known ?? searchOf(plans({ ...request, effort }));
          now.set(key, search);
          asked.set(search, { ...search, leads: resumes || leads(request) });
          return search.now();
        };
      return {
        solvers: {
          // Sheets of which there are only so many are shared out in order.
          sheets: kept("sheets", sheetPlans, ({ stock }) => stock.some(({ count }) => count !== undefined)),
          lengths: inBatches(kept("lengths", lengthPlans, () => false)),
          // What the pile leaves out is bought.
          pile: kept("pile", pilePlans, () => true),
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

/** Takes the first plan at once. */
function searchOf<Result>(plans: Generator<Result, Result>): Search<Result> {
  let { value, done = false } = plans.next();
  return {
    now: () => value,
    ended: () => done,
    advance: () => {
      const before = value;
      ({ value, done = false } = plans.next());
      return value !== before;
    },
  };
}
