/**
 * Plain values that cutting takes in and gives back. Lengths are millimetres. They are compared on the project's
 * length grid of 1/8000 mm, so millimetres and 1/64 inch both stay exact.
 *
 * Sheet frame: x along the width, y along the height, origin at the sheet's lower left corner, good face up.
 * Where a sheet has a direction (grain, print, texture), it runs along y.
 */

/** A range on a length or across a width, in mm, `from` less than `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A rectangle in the sheet frame, mm. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One kind and size of sheet that can be cut from. */
export interface SheetStock {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** What one sheet costs, in any one currency for the whole request; absent: its area in square metres. */
  readonly cost?: number;
  /** How many there are; absent: as many as wanted. */
  readonly count?: number;
  /** True where the sheet has a direction: nothing is then turned on it, whatever the piece allows. */
  readonly grain?: boolean;
  /** Lost along each of the four edges before cutting, mm, the blade of the trimming cut included; absent: 0. */
  readonly trim?: number;
  /** What no piece may be cut from. A sheet that has any is one of its kind: its count is 1. */
  readonly defects?: readonly Rectangle[];
  readonly source?: "bought" | "offcut";
  /** Material, thickness and colour as one key: a piece is cut only from stock of its own kind; absent: "". */
  readonly kind?: string;
}

/** One sheet piece to be cut, by its mark. */
export interface SheetDemand {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** May the piece be laid a quarter turn round on the stock? */
  readonly mayTurn: boolean;
  /** The finished outline inside the width by height rectangle that is sawn first, mm from its lower left corner. */
  readonly outline?: readonly (readonly [number, number])[];
  readonly kind?: string;
}

/**
 * A region of a sheet and what the saw does with it. A cut runs `along` x or y right through the region; `at` is
 * where the blade starts on the other axis, and it takes the kerf from there up. The children lie before and
 * after the blade; a cut that leaves nothing behind the blade has one child. A region with neither cut, piece nor
 * `offcut` is waste.
 */
export interface CutNode extends Rectangle {
  readonly cut?: { readonly along: "x" | "y"; readonly at: number };
  readonly children?: readonly CutNode[];
  readonly piece?: string;
  readonly offcut?: true;
}

export interface SheetPlacement extends Rectangle {
  readonly demandId: string;
  /** Width and height here are as laid: a turned piece has them swapped. */
  readonly turned: boolean;
}

export interface CutSheet {
  readonly stockId: string;
  /** 0-based among the sheets used of this stock. */
  readonly index: number;
  readonly tree: CutNode;
  readonly placements: readonly SheetPlacement[];
  readonly offcuts: readonly Rectangle[];
}

/**
 * Why a piece is not in the plan: no stock of its kind or section; larger than any such stock or sound run allows;
 * its width, thickness or lot found in none of the stock; or all that could take it is used up.
 */
export type UnplacedReason = "no-stock" | "too-large" | "no-match" | "stock-used-up";

export interface Unplaced {
  readonly demandId: string;
  readonly reason: UnplacedReason;
}

export interface SheetPlan {
  readonly sheets: readonly CutSheet[];
  readonly unplaced: readonly Unplaced[];
}

export interface SheetRequest {
  readonly stock: readonly SheetStock[];
  readonly demands: readonly SheetDemand[];
  /** Width of the blade's cut, mm, from 0. */
  readonly kerf: number;
  /** A leftover is kept as an offcut when both its sides reach this, mm; absent: 200. */
  readonly keepOffcutFrom?: number;
  /** The saw turns at most this often between sheet and piece (trimming counts as a turn); absent: free. */
  readonly stages?: number;
  /** Cuts of the first turn, and the edge, lie no further apart than this round what holds a piece, mm; absent: free. */
  readonly furthestFirstCuts?: number;
  /** How far off the nearer edge of a part a cut can be set, mm: the order of cuts goes by it as far as it can; absent: any. */
  readonly reach?: number;
  /** How many improving steps a solver may take; absent: the solver's own measure. */
  readonly budget?: number;
  /** Times the budget, from 1: with twice as many a search goes on from what it found with half of them; absent: 1. */
  readonly effort?: number;
  /** Seed of the search, a positive whole number; absent: 1. */
  readonly seed?: number;
}

/** A bar, batten, bought board or strip of one section, with the runs of it that are sound. */
export interface LengthStock {
  readonly id: string;
  readonly length: number;
  /** As for sheets; absent: the length in metres. */
  readonly cost?: number;
  readonly count?: number;
  /** Which pieces it serves, for example "batten 19x64" or "board 94". */
  readonly section: string;
  /** The pile board that it was ripped from. */
  readonly board?: string;
  readonly lot?: string;
  readonly width?: number;
  readonly thickness?: number;
  /** Sound runs along the length, in order, not overlapping. */
  readonly sound: readonly Span[];
}

export interface LengthDemand {
  readonly id: string;
  readonly length: number;
  readonly section: string;
  /** Stock without a stated width or thickness never meets one that is asked for. */
  readonly minWidth?: number;
  readonly minThickness?: number;
  /** Lots that the piece may come from; absent: any, and stock without a lot too. */
  readonly lots?: readonly string[];
}

export interface LengthPiece extends Span {
  readonly demandId: string;
}

export interface CutBar {
  readonly stockId: string;
  /** 0-based among the bars used of this stock. */
  readonly index: number;
  readonly pieces: readonly LengthPiece[];
  /** Sound lengths left over that are long enough to keep. */
  readonly rests: readonly Span[];
}

export interface LengthPlan {
  readonly bars: readonly CutBar[];
  readonly unplaced: readonly Unplaced[];
}

export interface LengthRequest {
  readonly stock: readonly LengthStock[];
  readonly demands: readonly LengthDemand[];
  readonly kerf: number;
  /** Lost at each end of a bar, mm, the blade of that cut included; absent: 0. */
  readonly endTrim?: number;
  /** Kept clear beside a defect, mm; absent: 0. */
  readonly defectMargin?: number;
  /** A rest is kept from this length, mm; absent: 300. */
  readonly keepRestFrom?: number;
  readonly budget?: number;
  /** Times the budget, as of sheets. */
  readonly effort?: number;
  readonly seed?: number;
}

/** A board of the pile: unlike its neighbours, with what is wrong with it. Across runs from its left edge. */
export interface PileBoard {
  readonly id: string;
  readonly lot: string;
  /** What its good face looks like, as it was sorted by colour or depth of char; absent: like the rest of its lot. */
  readonly look?: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** Bark or missing wood along one edge, by its width in mm. */
  readonly wane?: { readonly edge: "left" | "right"; readonly width: number };
  /** Nail rows, rot, splits, knot holes: each spoils the whole width from `from` to `to`. */
  readonly defects: readonly Span[];
}

/** A strip width wanted, with the lengths to be cut from it. */
export interface RipDemand {
  readonly section: string;
  readonly width: number;
  /** The board must be at least this thick, mm; absent: any. */
  readonly minThickness?: number;
  /** Lots that it may come from; absent: any. */
  readonly lots?: readonly string[];
  /** Sound length wanted over all such strips, mm. */
  readonly totalLength: number;
  /** Sound runs shorter than this are of no use for it, mm; absent: 0. */
  readonly shortest?: number;
}

export interface RipRequest {
  readonly boards: readonly PileBoard[];
  readonly widths: readonly RipDemand[];
  readonly kerf: number;
  /** Taken off each edge to make it straight, mm, that cut's blade included; wane comes off besides; absent: 2.5. */
  readonly straighten?: number;
}

export interface RipStrip {
  readonly id: string;
  readonly section: string;
  readonly across: Span;
}

export interface RippedBoard {
  readonly boardId: string;
  /** From the left edge to the right. */
  readonly strips: readonly RipStrip[];
}

/**
 * What the pile can give of one width: the sound length wanted and had, mm; `byLot` tells where it comes from.
 * `short` is the difference where too little is had, else 0.
 */
export interface RipSupply {
  readonly section: string;
  readonly wanted: number;
  readonly had: number;
  readonly short: number;
  readonly byLot: readonly { readonly lot: string; readonly had: number }[];
}

export interface RipPlan {
  readonly boards: readonly RippedBoard[];
  readonly supply: readonly RipSupply[];
}

/**
 * How a bound was reached: not at all, by total area or length, by counting pieces too large to lie beside each other, by
 * dual feasible functions, or by a linear programme over all patterns of bars or of cuts right through a sheet.
 */
export type BoundMethod =
  | "none"
  | "total"
  | "large-pieces"
  | "dual-feasible"
  | "pattern-lp"
  | "guillotine-lp";

/**
 * What no plan for the same pieces can cost less than. `gap` is (cost - bound) / cost; `proven` says that the plan
 * is best: it costs no more than the bound and leaves out only what no stock can give.
 */
export interface Bound {
  readonly bound: number;
  readonly gap: number;
  readonly proven: boolean;
  readonly how: BoundMethod;
}

export interface CutResult<Plan> {
  readonly plan: Plan;
  readonly cost: number;
  readonly bound: Bound;
  /** Packing passes that were made. */
  readonly iterations: number;
  readonly seed: number;
}

export type SheetSolver = (request: SheetRequest) => CutResult<SheetPlan>;
export type LengthSolver = (request: LengthRequest) => CutResult<LengthPlan>;
