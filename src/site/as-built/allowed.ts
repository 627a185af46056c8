/** How far joints and clearances may be from what they were set out to, and what cutting again costs: the file's, or what is usual. */
import type { Project } from "../../project/schema/project.ts";

/** Of joints (mm): what a row of gaps may spread before the eye takes it amiss, common practice. */
const USUAL_JOINT = 2;
/** Of clearances beside frames (mm), common practice: half of what usual sealing strips and flashing turns leave. */
const USUAL_CLEARANCE = 3;
/** Courses and level joints that run on in one line may step by so much (mm), common practice: no eye sees it. */
export const UNSEEN_MM = 1;

export interface Allowed {
  readonly joint: number;
  readonly clearance: number;
  /** Names of the fields that the file leaves to what is usual. */
  readonly usual: readonly string[];
}

export function allowedOf({ asBuilt }: Pick<Project, "asBuilt">): Allowed {
  const { joint, clearance } = asBuilt?.within ?? {};
  return {
    joint: joint?.value ?? USUAL_JOINT,
    clearance: clearance?.value ?? USUAL_CLEARANCE,
    usual: [
      ...(joint?.basis === "given" ? [] : ["asBuilt.within.joint"]),
      ...(clearance?.basis === "given" ? [] : ["asBuilt.within.clearance"]),
    ],
  };
}

/** How far a piece has come, as cutting it again sees it. */
export type Come = "uncut" | "cut" | "finished" | "fixed";

/**
 * What it costs to trim a piece and to make it again, against trimming one that is cut and bare: what is finished must be finished again at its
 * edge, and a remake takes new stock. Common practice. Paper alone changes for what is not cut.
 */
export interface Weights {
  readonly trimCut: number;
  readonly trimFinished: number;
  readonly remakeCut: number;
  readonly remakeFinished: number;
}

export function weightsOf({ asBuilt }: Pick<Project, "asBuilt">): Weights {
  const { trimCut = 1, trimFinished = 3, remakeCut = 2, remakeFinished = 6 } = asBuilt?.weights ?? {};
  return { trimCut, trimFinished, remakeCut, remakeFinished };
}
