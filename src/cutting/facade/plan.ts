/** The cut plan of a facade: what is sawn from which sheet, length and board of the pile, and what has no place yet. */
import type { Spoiled } from "../../project/schema/spoiled.ts";
import type {
  BoundMethod,
  CutResult,
  LengthPlan,
  LengthRequest,
  RippedBoard,
  SheetPlan,
  SheetRequest,
  UnplacedReason,
} from "../model.ts";
import type { PileRequest, PileResult } from "../pile.ts";

/**
 * What a part's cost and bound are counted in: money where every stock of the part has a price, else the square metres
 * or metres of stock used.
 */
export type CostUnit = "money" | "m2" | "m";

/** Sheet pieces of one material and thickness. Demand ids are the pieces' marks, stock ids those of the project. */
export interface SheetPart {
  /** Ids of the claddings, in the project's order. */
  readonly claddings: readonly string[];
  readonly material: string;
  readonly thickness: number;
  readonly request: SheetRequest;
  readonly result: CutResult<SheetPlan>;
  readonly costIn: CostUnit;
  /** How often the fence is set for all its sheets. */
  readonly settings: number;
}

/** Pieces cut from bought lengths of one section. A piece narrower than the section is ripped after it is cut. */
export interface LengthPart {
  readonly use: "battens" | "backing" | "boards";
  /** Id of the batten or board in the project's stock; undefined where nothing in stock has the section. */
  readonly stock?: string;
  /** Species, where the pieces agree on one. */
  readonly material: string;
  readonly width: number;
  readonly thickness: number;
  readonly request: LengthRequest;
  readonly result: CutResult<LengthPlan>;
  readonly costIn: CostUnit;
  /** How often the stop is set for all its bars. */
  readonly settings: number;
}

/** Board pieces of one cladding and width, as they are asked of the pile. */
export interface PileWant {
  readonly section: string;
  readonly cladding: string;
  readonly species: string;
  readonly width: number;
  readonly thickness: number;
}

/** Boards ripped from the pile and cut to length. Strips cost their area in square metres. */
export interface PilePart {
  readonly wants: readonly PileWant[];
  readonly request: PileRequest;
  readonly result: PileResult;
  /** Of the boards that the solver thought of ripping, those that pieces are cut from. */
  readonly ripped: readonly RippedBoard[];
}

/** Board pieces that neither the pile nor the boards in stock can give. */
export interface BoardsToFind {
  readonly cladding: string;
  readonly species: string;
  readonly width: number;
  readonly thickness: number;
  readonly pieces: readonly { readonly mark: string; readonly length: number }[];
}

/** How much of each kind of stock a plan saws. */
export interface CutCounts {
  readonly sheets: number;
  /** Bought lengths of battens, backing and boards. */
  readonly lengths: number;
  /** Of the pile, ripped. */
  readonly boards: number;
  /** Pieces without a place, boards to find among them. */
  readonly missing: number;
  /** In the stock's currency. */
  readonly cost: number;
}

export interface CutPlan {
  readonly sheets: readonly SheetPart[];
  readonly lengths: readonly LengthPart[];
  /** Undefined where no cladding takes boards from a pile. */
  readonly rips?: PilePart;
  readonly boards: {
    readonly bought: readonly LengthPart[];
    readonly toFind: readonly BoardsToFind[];
  };
  /** Of all parts that are counted in money, in the stock's currency. */
  readonly cost: number;
  readonly bound: number;
  /** (cost − bound) / cost, 0 where nothing is counted in money. */
  readonly gap: number;
  readonly proof: BoundMethod;
  /** True where no plan of the parts counted in money costs less. */
  readonly proven: boolean;
  /** Sheets, battens and backing without a place; boards without one are in `boards.toFind`. */
  readonly unplaced: readonly { readonly mark: string; readonly reason: UnplacedReason }[];
  /** Stock that the plan does without since it was spoiled, and what was sawn before; absent where nothing was. */
  readonly spoiled?: {
    readonly stock: readonly Spoiled[];
    /** Undefined where a verifier refused the former plan. */
    readonly before?: CutCounts;
  };
}
