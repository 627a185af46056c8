/**
 * The storey rod: how a run of boards starts and ends on control lines. One dimension, so it serves level courses along a
 * height and upright boards along a length alike; `start` is the lower or left end, `end` the upper or right one.
 * All lengths in millimetres, taken on the grid of 1/8000 mm.
 */

/** The stretch between two control lines that boards and gaps must fill exactly. */
export interface RodSegment {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Whether a gap lies inside the segment at its start, between the line and the first board. */
  readonly gapAtStart: boolean;
  /** Whether a gap lies inside the segment at its end, between the last board and the line. */
  readonly gapAtEnd: boolean;
}

/** A line that some board edge is wished to meet, such as a sill on a neighbouring face. */
export interface SecondaryLine {
  readonly id: string;
  readonly at: number;
  /** Which edge must meet it: the end (upper, right) or the start (lower, left) of a board. */
  readonly edge: "end-of-board" | "start-of-board";
  /**
   * How far the edge may fall short, on the safe side alone: an end in [at - tolerance, at], a start in [at, at + tolerance].
   * Below the narrowest width, so that no two edges can claim one line.
   */
  readonly tolerance: number;
}

/** One board of a width of its own, ripped for one segment and used in it exactly once. */
export interface RippedBoard {
  readonly segment: string;
  readonly width: number;
}

/** A stretch of the rod that round ducts of that span cut out of the boards before them. */
export interface DuctSpan {
  readonly of: readonly string[];
  readonly from: number;
  readonly to: number;
}

export interface RodProblem {
  /** In order, not overlapping. A board run goes on over a border where two segments meet, and starts afresh where they do not. */
  readonly segments: readonly RodSegment[];
  /** One to three board widths, all different. */
  readonly widths: readonly number[];
  /** Least and greatest gap; one gap runs through a segment. */
  readonly gapBand: readonly [min: number, max: number];
  /** The look rule: how many boards of one width may touch, counted over borders too; `undefined` for no rule. */
  readonly maxEqualTouching: number | undefined;
  /** Wished, not demanded: as many as possible are met. */
  readonly secondaryLines: readonly SecondaryLine[];
  readonly ripped?: readonly RippedBoard[];
  /** Beside which no sliver of a board should be left: of its width, less than `leastShare`. */
  readonly ducts?: { readonly spans: readonly DuctSpan[]; readonly leastShare: number };
  /** The gap to come near where the rest leaves a choice; the middle of the band unless told. */
  readonly preferredGap?: number;
}

/** Most board widths a rod may mix, and most secondary lines it may heed. */
export const MOST_WIDTHS = 3;
export const MOST_SECONDARY_LINES = 64;

/** Why a rod cannot be worked at all. */
export type RodProblemCode =
  | "no-segments"
  | "segment-not-ahead"
  | "segments-overlap"
  | "segment-id-repeated"
  | "no-widths"
  | "too-many-widths"
  | "width-not-positive"
  | "width-repeated"
  | "band-not-a-band"
  | "touching-not-a-count"
  | "too-many-lines"
  | "tolerance-out-of-range"
  | "ripped-segment-unknown"
  | "ripped-segment-repeated"
  | "ripped-width-out-of-range"
  | "not-a-number"
  /** more orders of boards than the exact search can hold: split the rod at a control line, or use fewer widths */
  | "too-large";

export interface RodProblemFault {
  readonly code: RodProblemCode;
  /** Path into the problem, such as `segments/1/to`. */
  readonly field: string;
  readonly value: number | string;
}
