/** A cut plan in its published shape. */
import { lotSpares } from "../../cutting/facade/lot-spares.ts";
import type { CutPlan, LengthPart, PilePart, SheetPart } from "../../cutting/facade/plan.ts";
import type { Begun } from "../../cutting/facade/recut.ts";
import { countsOf } from "../../cutting/facade/spoiled.ts";
import {
  type CutResult,
  type LengthPlan,
  type PileBoard,
  soundRuns,
  straightWidth,
  type Unplaced,
} from "../../cutting/index.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Reader } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import { findingJson } from "./finding.ts";
import { collected, type Listed } from "./print.ts";
import type { CutJson } from "./shapes/cut.ts";

interface CutFacts {
  readonly project: Project;
  readonly plan?: CutPlan | undefined;
  readonly findings: readonly Finding[];
  readonly begun?: readonly Begun[];
}

export function cutJson(facts: CutFacts, reader: Reader): CutJson {
  return collected<CutJson>(cutListed(facts, reader));
}

export function cutListed(
  { project, plan = NO_PLAN, findings, begun = [] }: CutFacts,
  reader: Reader,
): Listed<CutJson> {
  const { sheets, lengths, boards, rips, cost, bound, gap, proof, proven } = plan;
  return {
    schemaVersion: 1,
    currency: project.stock.currency,
    begun: begun.map(({ stock, done, still }) => ({ stock, done: [...done], still: [...still] })),
    spoiled: plan.spoiled
      ? {
          count: plan.spoiled.stock.length,
          before: plan.spoiled.before ?? null,
          after: countsOf(plan),
        }
      : null,
    sheets: mapped(sheets, sheetJson),
    lengths: mapped([...lengths, ...boards.bought], lengthJson),
    rips: rips ? pileJson(rips, project) : null,
    toFind: boards.toFind.map(({ pieces, ...one }) => ({
      ...one,
      pieces: pieces.map((piece) => ({ ...piece })),
    })),
    cost,
    bound,
    gap,
    proof,
    proven,
    findings: mapped(findings, (finding) => findingJson(finding, { reader, waivers: project.waivers })),
  };
}

/** Where the verifier refused the plan there is nothing to saw; a finding says so. */
const NO_PLAN: CutPlan = {
  sheets: [],
  lengths: [],
  boards: { bought: [], toFind: [] },
  cost: 0,
  bound: 0,
  gap: 0,
  proof: "none",
  proven: false,
  unplaced: [],
};

type Claim = Pick<CutJson, "cost" | "bound" | "gap" | "proof" | "proven">;

function claimOf({ cost, bound, iterations, seed }: CutResult<unknown>): Claim & {
  iterations: number;
  seed: number;
} {
  return {
    cost,
    bound: bound.bound,
    gap: bound.gap,
    proof: bound.how,
    proven: bound.proven,
    iterations,
    seed,
  };
}

function unplacedJson(unplaced: readonly Unplaced[]): { mark: string; reason: Unplaced["reason"] }[] {
  return unplaced.map(({ demandId, reason }) => ({ mark: demandId, reason }));
}

function sheetJson({ request, result, ...part }: SheetPart): CutJson["sheets"][number] {
  return {
    claddings: [...part.claddings],
    material: part.material,
    thickness: part.thickness,
    kerf: request.kerf,
    costIn: part.costIn,
    settings: part.settings,
    ...claimOf(result),
    sheets: result.plan.sheets.map(({ stockId, index, tree, placements, offcuts }) => {
      const { width = 0, height = 0 } = request.stock.find(({ id }) => id === stockId) ?? {};
      return {
        stock: stockId,
        index,
        width,
        height,
        placements: placements.map(({ demandId, ...box }) => ({ mark: demandId, ...box })),
        offcuts: offcuts.map((one) => ({ ...one })),
        // The tree is plain values all the way down; its type only forbids changing them.
        tree: tree as CutJson["sheets"][number]["sheets"][number]["tree"],
      };
    }),
    unplaced: unplacedJson(result.plan.unplaced),
  };
}

function lengthJson({ request, result, ...part }: LengthPart): CutJson["lengths"][number] {
  return {
    use: part.use,
    ...(part.stock !== undefined && { stock: part.stock }),
    material: part.material,
    width: part.width,
    thickness: part.thickness,
    kerf: request.kerf,
    costIn: part.costIn,
    settings: part.settings,
    ...claimOf(result),
    bars: barsJson(result.plan, request.stock),
    unplaced: unplacedJson(result.plan.unplaced),
  };
}

function barsJson(
  plan: LengthPlan,
  stock: readonly { readonly id: string; readonly length: number }[],
): CutJson["lengths"][number]["bars"] {
  const lengths = new Map(stock.map(({ id, length }) => [id, length]));
  return plan.bars.map(({ stockId, index, pieces, rests }) => ({
    stock: stockId,
    index,
    length: lengths.get(stockId) ?? 0,
    pieces: pieces.map(({ demandId, from, to }) => ({ mark: demandId, from, to })),
    rests: rests.map((rest) => ({ ...rest })),
  }));
}

function pileJson(part: PilePart, { pile }: Project): NonNullable<CutJson["rips"]> {
  const { wants, request, result } = part;
  const { rips, strips, lengths } = result;
  const boards = new Map(request.boards.map((board) => [board.id, board]));
  const faces = new Map(pile?.boards.map(({ id, face }) => [id, face]));
  const grades = new Map(pile?.boards.map(({ id, grade }) => [id, grade]));
  return {
    ...claimOf(lengths),
    leftOut: { ...result.leftOut },
    kerf: request.kerf,
    straighten: request.straighten ?? 0,
    endTrim: request.endTrim ?? 0,
    boards: rips.boards.map(({ boardId, strips: own }) => ({
      ...boardJson(boards.get(boardId), request),
      board: boardId,
      ...(faces.get(boardId) !== undefined && { face: faces.get(boardId) }),
      ...(grades.get(boardId) !== undefined && { grade: grades.get(boardId) }),
      strips: own.map(({ id, section, across }) => ({ id, section, across: { ...across } })),
    })),
    supply: rips.supply.map(({ byLot, ...supply }) => {
      const want = wants.find(({ section }) => section === supply.section);
      return {
        ...supply,
        cladding: want?.cladding ?? "",
        width: want?.width ?? 0,
        byLot: byLot.map((one) => ({ ...one })),
      };
    }),
    lots: lotSpares(part).map((one) => ({ ...one })),
    bars: barsJson(lengths.plan, strips),
  };
}

function boardJson(board: PileBoard | undefined, request: PilePart["request"]) {
  if (board === undefined) throw new Error("a board that is ripped is of the pile");
  const { lot, length, width, thickness } = board;
  return {
    lot,
    length,
    width,
    thickness,
    straight: straightWidth(board, request),
    sound: soundRuns(board),
  };
}
