/**
 * What the plane search is asked and what it answers. Lengths in millimetres; depths are measured outward from the
 * sheathing's outer face.
 */
import type { Demands } from "../../codes/demands.ts";
import type { PatchOperation } from "../../findings/finding.ts";
import type { ZoneRef } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Message } from "../../text/message.ts";

/** How much of the boards' given thickness may be planed off: from `least` (below 0: planed less than given) to `most`. */
export interface Planing {
  /** 0 where absent. */
  readonly least?: number;
  readonly most: number;
  /** Above 0; the multiples of it within the range are tried, 0 among them. */
  readonly step: number;
}

export interface PlaneSearchRequest {
  readonly project: Project;
  readonly demands: Demands;
  /** The zones whose build-ups may change: side by side in a face, or round an open mitre. */
  readonly zones: readonly ZoneRef[];
  /** Nothing is planed off, unless told. */
  readonly planing?: Planing;
  /** How many combinations are told in full; the counts are exact whatever it says. */
  readonly show?: { readonly passing: number; readonly failing: number };
}

export type PlaneRule =
  | "meet"
  | "mitre"
  | "cavity"
  | "cavity-rules"
  | "cladding-screw"
  | "batten-screw"
  | "rail-screw"
  | "narrower-batten"
  | "frame"
  | "proportion"
  | "lot"
  | "soft-packers";

/** A rule that a combination breaks, or that deserves a look: with its numbers and a sentence. */
export interface RuleSaid {
  readonly rule: PlaneRule;
  readonly outcome: "fail" | "attention";
  /** The zones that it is about; none for a rule on boards. */
  readonly zones: readonly ZoneRef[];
  readonly demand?: number;
  readonly limit?: number;
  readonly unit?: "mm" | "1";
  readonly says: Message;
}

/** What a combination puts behind a cladding. */
export interface BuildUpPlan {
  readonly buildUp: string;
  /** Ids of the stock, battens and rails from the sheathing outward. */
  readonly battens: readonly string[];
  /** Thicknesses, thickest first. */
  readonly packers: readonly number[];
  readonly battenScrew: string;
  /** Where there are rails. */
  readonly railScrew?: string;
}

export interface CladdingPlan {
  readonly cladding: string;
  /** Less than the given thickness by this. */
  readonly planed: number;
  readonly thickness: number;
  readonly screw: string;
}

export interface ZonePlan extends ZoneRef {
  readonly faceZ: number;
  readonly backZ: number;
  readonly cavity: number;
  /** How far each window and door frame stays behind the face; below 0 it stands proud. */
  readonly reveals: readonly { readonly opening: string; readonly reveal: number }[];
}

export interface PlaneMeeting {
  readonly kind: "side by side" | "open mitre";
  readonly left: ZoneRef;
  readonly right: ZoneRef;
  /** Right plane less left plane. */
  readonly step: number;
  readonly limit: number;
}

/** What combinations are ranked by, in the order in which they stand here; less is better in each. */
export interface PlaneMerit {
  /** Rule families of board proportion that hold as given and no longer after planing. */
  readonly broken: number;
  /** Pieces of packing behind one batten of each build-up. */
  readonly packers: number;
  /** Sum over the claddings, either way from the given thickness. */
  readonly planing: number;
  /** What the shallowest cavity lacks of a depth beyond which more is no better. */
  readonly cavityShort: number;
  /** Price of one metre of batten behind each build-up; 0 for all where a price is missing. */
  readonly battenCost: number;
  /** Different battens of the stock. */
  readonly battens: number;
  /** Largest step between faces that meet. */
  readonly step: number;
  /** Sum of the packers' thicknesses. */
  readonly packing: number;
  /** Values of the project that are written anew. */
  readonly changes: number;
  /** Outermost plane: a shallow reveal and short screws. */
  readonly plane: number;
}

export interface PlaneCombination {
  readonly buildUps: readonly BuildUpPlan[];
  readonly claddings: readonly CladdingPlan[];
  readonly zones: readonly ZonePlan[];
  readonly meetings: readonly PlaneMeeting[];
  readonly merit: PlaneMerit;
  /** Whether the project has it already. */
  readonly present: boolean;
  /** Why it ranks where it ranks: what the best of its list has before it. */
  readonly rank: Message;
  readonly failed: readonly RuleSaid[];
  readonly attention: readonly RuleSaid[];
}

export interface PassingCombination extends PlaneCombination {
  /** JSON Patch (RFC 6902) that puts it into the project file; empty for what is there already. */
  readonly edit: readonly PatchOperation[];
}

export interface PlaneCounts {
  /** Every combination of battens, packers and planing. */
  readonly all: number;
  /** Those whose faces meet; the rest is ruled out by its step alone. */
  readonly meeting: number;
  readonly passing: number;
  readonly failing: number;
  /** Of the failing: those that break one rule and no more. */
  readonly failingOne: number;
}

export interface PlaneSearchResult {
  readonly zones: readonly ZoneRef[];
  /** Zones that change with them, because they share a build-up or a planed cladding. */
  readonly followers: readonly ZoneRef[];
  readonly counts: PlaneCounts;
  /** Best first. */
  readonly passing: readonly PassingCombination[];
  /** Faces meet, but rules are broken: those that break one rule first, then by rank. */
  readonly failing: readonly PlaneCombination[];
  readonly leftOut: { readonly passing: number; readonly failing: number };
  /** Where nothing passes: what comes nearest to one plane among the combinations that break no other rule. */
  readonly nearest?: PlaneCombination;
}
