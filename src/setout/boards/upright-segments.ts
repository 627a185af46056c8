/** The segments of a zone's upright boards, from jamb to jamb, and the jambs that lie between them. */
import type { KeepOut, ZoneGround } from "../ground-plan.ts";
import type { RodSegment } from "../rod/index.ts";

/** A jamb between two segments. */
export interface Jamb {
  readonly opening: string;
  readonly side: "left" | "right";
}

/** Segment n lies between borders n and n + 1. */
export interface UprightSegments {
  readonly segments: readonly RodSegment[];
  /** Between the segments, from the left. */
  readonly jambs: readonly Jamb[];
}

/** From the zone's left to its right, broken at jambs that leave room for a board on both sides. */
export function uprightSegments(
  { bounds, keepOuts }: { readonly bounds: ZoneGround["bounds"]; readonly keepOuts: readonly KeepOut[] },
  narrowest: number,
): UprightSegments {
  const [left, right] = bounds.x;
  const segments: RodSegment[] = [];
  const jambs: Jamb[] = [];
  let from = left;
  const add = (to: number, beside: boolean): void => {
    segments.push({ id: String(segments.length + 1), from, to, gapAtStart: !beside, gapAtEnd: !beside });
    from = to;
  };
  for (const { of, rect } of [...keepOuts].sort((a, b) => a.rect.x[0] - b.rect.x[0])) {
    const [start, end] = rect.x;
    const roomBefore = start - from >= narrowest;
    const roomAfter = right - end >= narrowest;
    if (!roomBefore || !roomAfter || end - start < narrowest) continue;
    add(start, true);
    add(end, false);
    jambs.push({ opening: of, side: "left" }, { opening: of, side: "right" });
  }
  add(right, true);
  return { segments, jambs };
}
