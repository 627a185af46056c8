/**
 * Cuts a set-out facade from the project's sheets, lengths and pile. Pure: the same facade gives the same plan. No plan
 * leaves here that the verifiers have not passed.
 */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { strongest } from "../bounds.ts";
import { tidySum } from "../cost.ts";
import { cutLengths } from "../lengths.ts";
import type { CutResult, LengthSolver, SheetSolver, UnplacedReason } from "../model.ts";
import { cutPile } from "../pile.ts";
import { resumedLengths, resumedSheets } from "../resume.ts";
import { cutSheets } from "../sheets.ts";
import { alikeFindings } from "./alike.ts";
import { boardParts, type PileSolver } from "./board-parts.ts";
import { boundFindings, pileFindings, refusalFindings, stockFindings } from "./findings.ts";
import { inBatches } from "./in-batches.ts";
import { lengthParts } from "./length-parts.ts";
import { sawnPieces } from "./pieces.ts";
import type { CutPlan, LengthPart, SheetPart } from "./plan.ts";
import { sawFindings } from "./saw-findings.ts";
import { sheetParts } from "./sheet-parts.ts";
import { countsOf, resumedPile, unspoiled, withoutSpoiled } from "./spoiled.ts";
import { refusals } from "./verify-parts.ts";

export interface CutSolvers {
  readonly sheets: SheetSolver;
  readonly lengths: LengthSolver;
  readonly pile: PileSolver;
}

export interface CutOutcome {
  /** Undefined where a verifier refused it: then a finding says so. */
  readonly plan?: CutPlan;
  /** C001 to C006. */
  readonly findings: readonly Finding[];
}

/** Our own, which search with as many steps as the project asks for. */
export function ownSolvers({ cutting }: Project): CutSolvers {
  const effort = cutting?.effort ?? 1;
  return {
    sheets: (request) => cutSheets({ ...request, effort }),
    lengths: inBatches((request) => cutLengths({ ...request, effort })),
    pile: (request) => cutPile({ ...request, effort }),
  };
}

/**
 * Without the stock that the file tells of as spoiled; what else was planned then keeps its place, unless a plan from nothing
 * costs less.
 *
 * @param solvers others than our own, as for a trial of a new one
 */
export function cutFacade(
  project: Project,
  facade: Facade,
  solvers: CutSolvers = ownSolvers(project),
): CutOutcome {
  const spoiled = project.cutting?.spoiled ?? [];
  if (spoiled.length === 0) return cutWhole(project, facade, solvers);
  const known = remembering(solvers);
  const { plan: former } = cutWhole(project, facade, known);
  const kept = former ? unspoiled(former, spoiled) : { sheets: [], bars: [] };
  const { plan, findings } = cutWhole(withoutSpoiled(project), facade, {
    sheets: resumedSheets(known.sheets, { sheets: kept.sheets, unplaced: [] }),
    lengths: resumedLengths(known.lengths, { bars: kept.bars, unplaced: [] }),
    pile: resumedPile(known.pile, former?.rips),
  });
  if (!plan) return { findings };
  return {
    plan: { ...plan, spoiled: { stock: spoiled, ...(former && { before: countsOf(former) }) } },
    findings,
  };
}

/** What was asked once is not searched again: much of what is left is asked as it was before. */
function remembering(solvers: CutSolvers): CutSolvers {
  const once = <Request, Result>(solve: (request: Request) => Result): ((request: Request) => Result) => {
    const known = new Map<string, Result>();
    return (request) => {
      const key = JSON.stringify(request);
      const result = known.get(key) ?? solve(request);
      known.set(key, result);
      return result;
    };
  };
  return { sheets: once(solvers.sheets), lengths: once(solvers.lengths), pile: once(solvers.pile) };
}

function cutWhole(project: Project, facade: Facade, solvers: CutSolvers): CutOutcome {
  const sawn = sawnPieces(project, facade);
  const sheets = sheetParts(project, sawn, solvers.sheets);
  const lengths = lengthParts(project, sawn, solvers.lengths);
  const { rips, bought, toFind } = boardParts(project, sawn, solvers);
  const refused = refusals({ sheets, lengths, rips, bought });
  if (refused.length > 0) return { findings: refusalFindings(refused) };
  const plan: CutPlan = {
    sheets,
    lengths,
    ...(rips === undefined ? {} : { rips }),
    boards: { bought, toFind },
    ...inMoney([...sheets, ...lengths, ...bought]),
    unplaced: [...sheets, ...lengths].flatMap(withoutPlace),
  };
  return {
    plan,
    findings: [
      ...pileFindings(project, plan),
      ...stockFindings(project, plan),
      ...boundFindings(project, plan),
      ...sawFindings(project, plan),
      ...alikeFindings(
        project,
        sawn.map(({ piece }) => piece),
        plan,
      ),
    ],
  };
}

function withoutPlace({
  result,
}: SheetPart | LengthPart): { readonly mark: string; readonly reason: UnplacedReason }[] {
  return result.plan.unplaced.map(({ demandId, reason }) => ({ mark: demandId, reason }));
}

interface Counted {
  readonly costIn: "money" | "m2" | "m";
  readonly result: Pick<CutResult<unknown>, "cost" | "bound">;
}

/** Cost and bound of the parts counted in money; square metres and metres do not add up with it. */
function inMoney(parts: readonly Counted[]): Pick<CutPlan, "cost" | "bound" | "gap" | "proof" | "proven"> {
  const priced = parts.filter(({ costIn }) => costIn === "money").map(({ result }) => result);
  const cost = tidySum(priced.map((one) => one.cost));
  const bound = tidySum(priced.map((one) => one.bound.bound));
  return {
    cost,
    bound,
    gap: cost > 0 ? (cost - bound) / cost : 0,
    proof: strongest(priced.map((one) => one.bound.how)),
    proven: priced.length > 0 && priced.every((one) => one.bound.proven),
  };
}
