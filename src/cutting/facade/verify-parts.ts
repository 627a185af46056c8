/** Every part of a cut plan put to the verifiers, against what the facade asks rather than what a solver says it asked. */
import { numberedCuts } from "../cut-order.ts";
import type { CutSheet, LengthPlan, LengthRequest, RipPlan, RipRequest, SheetRequest } from "../model.ts";
import { replayCrosscuts } from "../verify/crosscuts.ts";
import { verifyLengthPlan } from "../verify/lengths.ts";
import type { CutProblem } from "../verify/problem.ts";
import { replayRips } from "../verify/rip-steps.ts";
import { verifyRipPlan } from "../verify/rips.ts";
import { replayCuts } from "../verify/saw-steps.ts";
import { checkSettings, setBar, setSheet } from "../verify/settings.ts";
import { verifySheetPlan } from "../verify/sheets.ts";
import type { LengthPart, PilePart, SheetPart } from "./plan.ts";

/** What the verifiers say of one part. */
export interface Refusal {
  readonly part: "sheets" | "lengths" | "rips" | "boards";
  readonly problem: CutProblem<string>;
}

export function refusals(parts: {
  readonly sheets: readonly SheetPart[];
  readonly lengths: readonly LengthPart[];
  readonly rips: PilePart | undefined;
  readonly bought: readonly LengthPart[];
}): Refusal[] {
  const named = (part: Refusal["part"], problems: readonly CutProblem<string>[]): Refusal[] =>
    problems.map((problem) => ({ part, problem }));
  return [
    ...named(
      "sheets",
      parts.sheets.flatMap(({ request, result, settings }) => [
        ...checkSettings(
          result.plan.sheets.map(({ stockId, tree }) => setSheet(stockId, numberedCuts(tree))),
          settings,
          "/settings",
        ),
        ...verifySheetPlan({ request, plan: result.plan, claim: result }),
        ...result.plan.sheets.flatMap((sheet, index) => replayed(request, sheet, `/sheets/${index}`)),
      ]),
    ),
    ...named("lengths", parts.lengths.flatMap(lengthProblems)),
    ...named("rips", parts.rips ? pileProblems(parts.rips) : []),
    ...named("boards", parts.bought.flatMap(lengthProblems)),
  ];
}

/** The cuts made one after another by the numbers that stand on the drawn sheet. */
function replayed(request: SheetRequest, sheet: CutSheet, where: string): CutProblem<string>[] {
  const stock = request.stock.find(({ id }) => id === sheet.stockId);
  if (stock === undefined) return [];
  return replayCuts({ sheet, stock, cuts: numberedCuts(sheet.tree), kerf: request.kerf, where });
}

function lengthProblems({ request, result, settings }: LengthPart): CutProblem<string>[] {
  return [
    ...checkSettings(result.plan.bars.map(setBar), settings, "/settings"),
    ...verifyLengthPlan({ request, plan: result.plan, claim: result }),
    ...crosscut(request, result.plan),
  ];
}

/** Every bar cut to length from its left end, as it is drawn. */
function crosscut({ stock, kerf, endTrim = 0 }: LengthRequest, { bars }: LengthPlan): CutProblem<string>[] {
  const stocks = new Map(stock.map((one) => [one.id, one]));
  return bars.flatMap((bar, index) => {
    const one = stocks.get(bar.stockId);
    return one ? replayCrosscuts({ bar, stock: one, kerf, endTrim, where: `/bars/${index}` }).problems : [];
  });
}

/** Every board ripped from its left edge, as it is drawn. */
function ripped({ boards, kerf, straighten = 0 }: RipRequest, plan: RipPlan): CutProblem<string>[] {
  const known = new Map(boards.map((one) => [one.id, one]));
  return plan.boards.flatMap((one, index) => {
    const board = known.get(one.boardId);
    return board
      ? replayRips({ ripped: one, board, kerf, straighten, where: `/boards/${index}` }).problems
      : [];
  });
}

/** The rips against the pile as it lies, then the lengths against the strips and the pieces of the facade. */
function pileProblems({ request, result }: PilePart): CutProblem<string>[] {
  const { boards, wanted, kerf, straighten, endTrim, defectMargin } = request;
  const rips: RipRequest = {
    boards,
    kerf,
    ...(straighten === undefined ? {} : { straighten }),
    widths: wanted.map(({ section, width, minThickness, lots }, index) => {
      // How much length to ask for is the solver's choice; what a strip must be is not.
      const asked = result.ripRequest.widths[index];
      return {
        section,
        width,
        ...(minThickness === undefined ? {} : { minThickness }),
        ...(lots === undefined ? {} : { lots }),
        totalLength: asked?.totalLength ?? 0,
        ...(asked?.shortest === undefined ? {} : { shortest: asked.shortest }),
      };
    }),
  };
  const lengths: LengthRequest = {
    stock: result.strips,
    kerf,
    ...(endTrim === undefined ? {} : { endTrim }),
    ...(defectMargin === undefined ? {} : { defectMargin }),
    demands: wanted.flatMap(({ section, width, minThickness, lots, pieces }) =>
      pieces.map(({ id, length }) => ({
        id,
        length,
        section,
        minWidth: width,
        ...(minThickness === undefined ? {} : { minThickness }),
        ...(lots === undefined ? {} : { lots }),
      })),
    ),
  };
  return [
    ...verifyRipPlan({ request: rips, plan: result.rips, strips: result.strips }),
    ...ripped(rips, result.rips),
    ...verifyLengthPlan({ request: lengths, plan: result.lengths.plan, claim: result.lengths }),
    ...crosscut(lengths, result.lengths.plan),
  ];
}
