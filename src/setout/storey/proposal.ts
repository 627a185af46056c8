/** A way to make a rod possible, before it is tried. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Message } from "../../text/message.ts";

/**
 * What a change touches, the least first: one sawn board; a clearance; the look; the band that the membrane and the animals depend on; the
 * edge of the cladding; an opening, which has its own drawings and makers.
 */
export const TOUCHES = ["board", "clearance", "look", "band", "zone", "opening"] as const;

export interface Proposal {
  readonly touches: (typeof TOUCHES)[number];
  /** How far lengths change in all, in mm; 0 where none does. */
  readonly size: number;
  readonly says: Message;
  /** Absent where it cannot be written into the project file. */
  readonly edit?: readonly PatchOperation[];
}

/** What changes less comes first; of the same kind, by less. */
export function byTouch(one: Proposal, other: Proposal): number {
  return TOUCHES.indexOf(one.touches) - TOUCHES.indexOf(other.touches) || one.size - other.size;
}
