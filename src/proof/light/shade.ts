/** What stands before a zone: eaves, or the recess that the face lies in. */
import { type Recess, recessLinedBy } from "../../project/lookup.ts";
import type { Face, Project } from "../../project/schema/project.ts";
import { NO_SHADE, type Shade } from "./model.ts";

export interface Shaded {
  readonly project: Project;
  readonly face: Face;
  /** Outer plane of the cladding from the sheathing (mm). */
  readonly faceZ: number;
}

/** Whether the shade changes with height. */
export function hasOverhang({ project, face }: Shaded): boolean {
  return face.eaves !== undefined || recessOf(project, face) !== undefined;
}

/**
 * The shade at a height. In a recess it is that of the point most open to the sky: on the back, from side to side; on a
 * side, the half that looks out.
 */
export function shadeAt({ project, face, faceZ }: Shaded, y: number): Shade {
  const under = face.eaves ? over({ faceZ, ...face.eaves }, y) : Infinity;
  const recess = recessOf(project, face);
  if (!recess) return { ...NO_SHADE, up: under };
  const { opening, parent } = recess;
  const deep = (opening.depth ?? 0) - faceZ;
  const turn = Math.round((face.azimuthDeg - parent.azimuthDeg + 720) % 360);
  if (turn < 45 || turn > 315) {
    const wide = opening.x[1] - opening.x[0];
    const side = deep > 0 ? wide / deep : Infinity;
    const up = over({ depth: opening.depth ?? 0, y: opening.y[1], faceZ }, y);
    return { up: Math.min(under, up), left: side, right: side };
  }
  // The way out lies to the left of a wall that looks to the right, seen from before the recess, and the other way round.
  return turn > 180 ? { up: under, left: 0, right: Infinity } : { up: under, left: Infinity, right: 0 };
}

function over(edge: { depth: number; y: number; faceZ: number }, y: number): number {
  const out = edge.depth - edge.faceZ;
  return out > 0 ? Math.max(0, edge.y - y) / out : Infinity;
}

function recessOf(project: Project, face: Face): Recess | undefined {
  const recess = recessLinedBy(project, face.id);
  return recess?.opening.kind === "recess" && recess.opening.depth !== undefined ? recess : undefined;
}
