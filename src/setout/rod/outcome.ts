import type { DuctStrip } from "./duct-strips.ts";
import type { RippedBoard, RodProblemFault } from "./problem.ts";

/** One board in place, in millimetres; `to - from` is `width`, on the grid exactly (in doubles, to the last bit or so). */
export interface Course {
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

export interface WidthCount {
  readonly width: number;
  readonly count: number;
}

export interface SegmentSolution {
  readonly id: string;
  readonly courses: readonly Course[];
  /**
   * The gap through this segment, in millimetres; `undefined` for one board alone that fills its segment. Edges lie on the
   * grid, so that a gap between two courses may differ from this by up to one grid step.
   */
  readonly gap: number | undefined;
  /** Boards of each width used, in the order of the problem's widths, a ripped one last. */
  readonly counts: readonly WidthCount[];
}

export interface MissedLine {
  readonly id: string;
  /** The nearest edge of the wished kind on the safe side of the line; `undefined` where there is none. */
  readonly nearest: number | undefined;
  /** How far that edge falls short of the line, in millimetres. */
  readonly offBy: number | undefined;
}

/** What a rod is judged by, in this order, each as small as can be. */
export interface RodMerit {
  /** Secondary lines no edge meets. */
  readonly missedLines: number;
  /** Widest gap less narrowest, between segments, in millimetres. */
  readonly gapSpread: number;
  /** Sum over segments of the distance of the gap from the preferred one, in millimetres. */
  readonly gapOffset: number;
  readonly boards: number;
}

/** The counts of a rod without the order of its boards. */
export interface RodSummary {
  readonly merit: RodMerit;
  readonly segments: readonly Omit<SegmentSolution, "courses">[];
}

export interface RodSolution {
  readonly segments: readonly SegmentSolution[];
  readonly gapSpread: number;
  readonly missedLines: readonly MissedLine[];
  readonly merit: RodMerit;
  /** Most boards of one width that touch anywhere on the rod. */
  readonly longestRun: number;
  /** Repeats of a pattern of one, two or three boards right after itself, which the order keeps as few as it can. */
  readonly repeats: number;
  /** Where it is another rod than ducts left aside would give. */
  readonly clearOf?: ClearOfDucts;
}

/** The rod that was passed over because ducts leave slivers of its boards. */
export interface ClearOfDucts {
  /** Ducts beside which it leaves a sliver and the chosen rod none. */
  readonly ducts: readonly string[];
  readonly without: Omit<RodSolution, "clearOf">;
  /** The narrowest of its slivers beside them. */
  readonly sliver: { readonly of: string; readonly width: number } & DuctStrip;
}

/** How the result is known to be the best. */
export interface RodProof {
  /** Combinations of counts within the band, all of which were ruled in or out, by working or by bound. */
  readonly examined: number;
  readonly exhaustive: true;
}

/** What the best rod would be with one rule eased, and how much better: what the rule costs. */
export interface RuleCost {
  /** `look` and `secondary` are dropped; `band` is widened to `easedBand`. */
  readonly rule: "look" | "secondary" | "band";
  readonly easedBand?: readonly [min: number, max: number];
  readonly withoutIt: RodSummary;
  /** The merit kept to less what it would be, so above zero is a saving; absent where the rod is impossible as it stands. */
  readonly saves?: RodMerit;
}

/** A gap that counts would give, outside the band. */
export interface GapOutsideBand {
  readonly gap: number;
  readonly counts: readonly WidthCount[];
}

export interface SegmentRefusal {
  readonly id: string;
  /**
   * `no-count-fits`: no counts give a gap within the band. `equal-touching`: some do, but none can be put in an order that
   * keeps the look rule. `equal-touching-across-borders`: each segment alone can keep it, all of them together cannot.
   */
  readonly reason: "no-count-fits" | "equal-touching" | "equal-touching-across-borders";
  readonly nearestBelow?: GapOutsideBand;
  readonly nearestAbove?: GapOutsideBand;
}

/** A control line moved, in millimetres; `by` with its sign. */
export interface LineMove {
  /** The segment the line ends and the one it starts; both where two segments meet. */
  readonly endOf: string | undefined;
  readonly startOf: string | undefined;
  readonly from: number;
  readonly to: number;
  readonly by: number;
}

/** The least change of one kind that makes an impossible rod possible. Lengths in millimetres. */
export type NearestChange =
  | ({ readonly kind: "move-line" } & LineMove)
  /** Where no single line will do: the moves whose lengths sum to the least. */
  | { readonly kind: "move-lines"; readonly moves: readonly LineMove[]; readonly sum: number }
  | {
      readonly kind: "widen-band";
      readonly end: "least" | "greatest";
      readonly gapBand: readonly [min: number, max: number];
      readonly by: number;
    }
  | { readonly kind: "rip"; readonly boards: readonly RippedBoard[] }
  | { readonly kind: "ease-look"; readonly maxEqualTouching: number };

export type RodOutcome =
  | {
      readonly kind: "solved";
      readonly best: RodSolution;
      /** The next best rods with other counts, best first, ducts left aside. */
      readonly alternatives: readonly RodSolution[];
      readonly ruleCosts: readonly RuleCost[];
      readonly proof: RodProof;
    }
  | {
      readonly kind: "impossible";
      readonly segments: readonly SegmentRefusal[];
      readonly nearestChanges: readonly NearestChange[];
      readonly ruleCosts: readonly RuleCost[];
      readonly proof: RodProof;
    }
  | { readonly kind: "unusable"; readonly faults: readonly RodProblemFault[] };
