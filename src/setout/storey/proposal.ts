/** A way to make a rod possible, before it is tried. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";

/**
 * What a change touches, the least first: a line of the project's own; one sawn board; a clearance; the look; the band that the membrane and the animals depend on; the
 * edge of the cladding; an opening, which has its own drawings and makers.
 */
export const TOUCHES = ["line", "board", "clearance", "look", "band", "zone", "opening"] as const;

export interface Proposal {
  readonly touches: (typeof TOUCHES)[number];
  /** How far lengths change in all, in mm; 0 where none does. */
  readonly size: number;
  readonly says: Message;
  /** Absent where it cannot be written into the project file. */
  readonly edit?: readonly PatchOperation[];
}

export function graver(one: Proposal["touches"], other: Proposal["touches"]): Proposal["touches"] {
  return TOUCHES.indexOf(one) > TOUCHES.indexOf(other) ? one : other;
}

/** What changes less comes first; of the same kind, by less. */
export function byTouch(one: Proposal, other: Proposal): number {
  return TOUCHES.indexOf(one.touches) - TOUCHES.indexOf(other.touches) || one.size - other.size;
}

/** A band is widened to whole tenths of a millimetre, outward, as gaps are read. */
const BAND_STEPS_PER_MM = 10;

/** A band wider at one end; undefined where it would reach below nothing. */
export function widened(
  [least, most]: readonly [number, number],
  end: "least" | "greatest",
  by: number,
): [number, number] | undefined {
  const value: [number, number] =
    end === "least"
      ? [Math.floor(snap(least + by) * BAND_STEPS_PER_MM) / BAND_STEPS_PER_MM, most]
      : [least, Math.ceil(snap(most + by) * BAND_STEPS_PER_MM) / BAND_STEPS_PER_MM];
  return value[0] < 0 ? undefined : value;
}

export function bandProposal(
  { claddings }: Project,
  cladding: BoardCladding,
  { value, by }: { readonly value: readonly [number, number]; readonly by: number },
): Proposal {
  const [least, most] = value;
  return {
    touches: "band",
    size: Math.abs(by),
    says: message("setout.rod.widen-band", { least, most }),
    edit: [{ op: "replace", path: `/claddings/${claddings.indexOf(cladding)}/gapBand`, value }],
  };
}

export function lookProposal({ claddings }: Project, cladding: BoardCladding, most: number): Proposal {
  const path = `/claddings/${claddings.indexOf(cladding)}/maxEqualWidthsTouching`;
  return {
    touches: "look",
    size: 0,
    says: message("setout.rod.ease-look", { most }),
    edit: [{ op: "replace", path, value: most }],
  };
}
