/** Keeps what was searched for, so that an edit cuts anew only what it asks otherwise: a picture of a board asks nothing. */
import type { Project } from "../../project/schema/project.ts";
import { type CutSolvers, ownSolvers } from "./cut-facade.ts";

export interface CutMemo {
  /** Our own solvers for one cutting of the project. What neither this cutting nor the one before has asked is forgotten. */
  solversFor(project: Project): CutSolvers;
}

export function createCutMemo(): CutMemo {
  let before = new Map<string, unknown>();
  let now = new Map<string, unknown>();
  return {
    solversFor: (project) => {
      before = now;
      now = new Map();
      const own = ownSolvers(project);
      const effort = project.cutting?.effort ?? 1;
      const once =
        <Request, Result>(kind: string, solve: (request: Request) => Result) =>
        (request: Request): Result => {
          const key = JSON.stringify([kind, effort, request]);
          // Under its own kind a key leads to nothing but that kind's results.
          const known = (now.get(key) ?? before.get(key)) as Result | undefined;
          const result = known ?? solve(request);
          now.set(key, result);
          return result;
        };
      return {
        sheets: once("sheets", own.sheets),
        lengths: once("lengths", own.lengths),
        pile: once("pile", own.pile),
      };
    },
  };
}
