import type { Message } from "../../text/message.ts";
import type { RippedBoard, RodProblemFault, RodSegment, RodSummary, SecondaryLine } from "../rod/index.ts";

/** Which board widths suit a rod best. Lengths in millimetres. */
export interface WidthsQuestion {
  readonly segments: readonly RodSegment[];
  readonly gapBand: readonly [min: number, max: number];
  readonly maxEqualTouching: number | undefined;
  readonly secondaryLines: readonly SecondaryLine[];
  /** The gap to come near where the rest leaves a choice; the middle of the band unless told. */
  readonly preferredGap?: number;
  /** Widths to choose from, both ends included; in steps of 1 mm unless told. */
  readonly widths: { readonly from: number; readonly to: number; readonly step?: number };
  /** Two widths that differ by less are taken for a mistake by the eye; any two widths may mix unless told. */
  readonly leastDifference?: number;
  /** What the stock gives of a width: metres of board, and the part of the timber that becomes board (0 to 1). */
  readonly supply?: (width: number) => WidthSupply;
  /** Length of one course round the building in metres; with it a width that the stock is short of is told. */
  readonly metresPerCourse?: number;
  /** How many choices are listed; 20 unless told. */
  readonly most?: number;
}

export interface WidthSupply {
  readonly metres: number;
  readonly yield: number;
}

export interface WidthChoice {
  /** One width or two, the narrower first. */
  readonly widths: readonly number[];
  readonly rod: RodSummary;
  readonly ripped: readonly RippedBoard[];
  /** Part of the timber that becomes board, widths weighed by what the rod uses of them; absent without a supply. */
  readonly yield: number | undefined;
  /** Widths that the stock is short of, and by how much. */
  readonly short: readonly { readonly width: number; readonly metres: number }[];
  /** The choice with its numbers. */
  readonly says: Message;
  /** What puts it behind the one before it. */
  readonly behind: Message | undefined;
}

export type WidthsOutcome =
  | {
      readonly kind: "ranked";
      readonly choices: readonly WidthChoice[];
      readonly proof: WidthsProof;
    }
  | { readonly kind: "unusable"; readonly faults: readonly RodProblemFault[] };

/** How the ranking is known to be right. */
export interface WidthsProof {
  /** Single widths and pairs within reach of the stock. */
  readonly sets: number;
  /** Of these, how many were solved; the others were ruled out by a bound or have no rod. */
  readonly solved: number;
  /** Every choice without a ripped board stands where an exact search of all sets puts it. */
  readonly exhaustive: true;
  /** How many sets without a rod were tried with ripped boards, to fill the list up, of how many; the likeliest first. */
  readonly ripped: { readonly tried: number; readonly of: number };
}
