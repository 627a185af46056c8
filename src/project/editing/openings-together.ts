/** Several openings at once: moved together, brought into line with one of them, and taken out. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Point } from "../../geometry/point.ts";
import type { Rect } from "../../geometry/rect.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { faceById } from "../lookup.ts";
import type { Change, Ref, Source } from "./change.ts";
import { placeOpening } from "./openings.ts";
import { takeOut } from "./taking-out.ts";

export type Edge = "head" | "sill" | "left" | "right";

function rectOf({ project }: Source, { face, id }: Ref): Rect | undefined {
  const opening = faceById(project, face)?.openings.find((one) => one.id === id);
  return opening && { x: opening.x, y: opening.y };
}

function edgeOf({ x, y }: Rect, edge: Edge): number {
  return edge === "head" ? y[1] : edge === "sill" ? y[0] : edge === "left" ? x[0] : x[1];
}

function shifted({ x, y }: Rect, by: Point): Rect {
  return { x: [snap(x[0] + by[0]), snap(x[1] + by[0])], y: [snap(y[0] + by[1]), snap(y[1] + by[1])] };
}

function shiftAll(source: Source, refs: readonly Ref[], by: (rect: Rect) => Point): PatchOperation[] {
  return refs.flatMap((ref) => {
    const rect = rectOf(source, ref);
    return [...((rect && placeOpening(source, ref, shifted(rect, by(rect)))?.operations) ?? [])];
  });
}

/** Moves them all by as much (mm). */
export function moveOpenings(source: Source, refs: readonly Ref[], by: Point): Change {
  return {
    operations: shiftAll(source, refs, () => by),
    says: message("project.edit.place", { id: refs.map(({ id }) => id) }),
  };
}

/**
 * Moves the others, whole, until one of their edges lies on that of the first. Jambs are aligned on one face alone: the
 * x of another is measured from elsewhere.
 */
export function alignOpenings(
  source: Source,
  [first, ...others]: readonly Ref[],
  edge: Edge,
): Change | undefined {
  const model = first && rectOf(source, first);
  if (!first || !model) return undefined;
  const upright = edge === "head" || edge === "sill";
  const operations = shiftAll(
    source,
    others.filter(({ face }) => upright || face === first.face),
    (rect) => {
      const by = snap(edgeOf(model, edge) - edgeOf(rect, edge));
      return upright ? [0, by] : [by, 0];
    },
  );
  if (operations.length === 0) return undefined;
  return { operations, says: message(`project.edit.align-${edge}`, { id: first.id }) };
}

export function removeOpenings(source: Source, refs: readonly Ref[]): Change {
  return {
    operations: takeOut(source, { openings: refs }),
    says: message("project.edit.take-out", { id: refs.map(({ id }) => id) }),
  };
}
