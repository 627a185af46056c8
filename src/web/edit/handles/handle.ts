/** What of the picked thing can be taken in the hand, and what taking it somewhere does to the file. */
import type { Design } from "../../../design.ts";
import type { PatchOperation } from "../../../findings/finding.ts";
import type { Point } from "../../../geometry/point.ts";
import type { Polygon } from "../../../geometry/polygon.ts";
import type { Rect } from "../../../geometry/rect.ts";
import type { Change, Source } from "../../../project/editing/change.ts";
import { valueAt } from "../../../project/pointer.ts";
import type { Message } from "../../../text/message.ts";
import type { Pick } from "../../picks/pick.ts";
import type { Met, SnapLines, Snapping } from "../snap.ts";

/** What is in the hand, before the facade has followed; in the face frame. */
export type Ghost = { readonly face: string; readonly met: Met } & (
  | { readonly kind: "rect"; readonly rect: Rect }
  | { readonly kind: "round"; readonly at: Point; readonly diameter: number }
  | { readonly kind: "line"; readonly axis: "x" | "y"; readonly at: number }
  | { readonly kind: "outline"; readonly outline: Polygon }
);

export interface Taken {
  readonly lines: SnapLines;
  /** Taken so far (mm, from where it was). */
  to(
    by: Point,
    snapping: Snapping,
  ): {
    readonly ghost: Ghost;
    readonly change: Change | undefined;
    /** What is then picked, where its name is its place. */
    readonly pick?: Pick;
  };
  /** Gives the file back what it held. */
  readonly back: readonly PatchOperation[];
}

/** What of a thing the keys move: the whole of it, a side, or a corner. */
export interface Part {
  readonly name: Message | string;
  readonly taken: Taken;
  /** Where it is, along the axes on which it may go (mm, face frame). */
  readonly at: { readonly x?: number; readonly y?: number };
  /** Where it is shown to be held; absent where that is the thing as it is picked. */
  readonly mark?: Point;
}

export interface Handle {
  readonly face: string;
  /** Steps of one name in a row are one to take back. */
  readonly name: string;
  /** What lies under a point of the face, `near` mm off at most. */
  take(at: Point, near: number): Taken | undefined;
  /** For the keys. */
  readonly parts: readonly Part[];
}

export function sourceOf(design: Design, document: unknown): Source {
  return { project: design.project, document };
}

/** The operations that put back what stands at some places of the document, though it be nothing. */
export function asItWas(document: unknown, paths: readonly string[]): PatchOperation[] {
  return paths.flatMap((path): PatchOperation[] => {
    const value = valueAt(document, path.slice(1).split("/"));
    // To take out what may not be there, it is put there first.
    return value === undefined
      ? [
          { op: "add", path, value: null },
          { op: "remove", path },
        ]
      : [{ op: "add", path, value }];
  });
}
