/** A recess made deeper or less deep, with the walls that line it: the back wall moves, those beside it grow or shrink with it. */
import type { PatchOperation } from "../../findings/finding.ts";
import { faceFrame } from "../../geometry/frame.ts";
import type { Point } from "../../geometry/point.ts";
import type { Face, Project } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import { faceLength } from "../corners.ts";
import type { Soffit } from "./spec.ts";

/**
 * @param by mm, with its sign
 * @returns nothing where a wall beside it holds openings that would have to move along it
 */
export function deepened(
  { faces }: Project,
  { of, opening, depth, path }: Soffit,
  by: number,
): PatchOperation[] | undefined {
  const { origin, outward } = faceFrame(of.plan);
  const inward: Point = [-outward[0], -outward[1]];
  const isBack = ([x, y]: readonly number[]): boolean =>
    ((x ?? 0) - origin[0]) * inward[0] + ((y ?? 0) - origin[1]) * inward[1] > depth / 2;
  const moved = ([x, y]: readonly number[]): number[] => [
    snap((x ?? 0) + by * inward[0]),
    snap((y ?? 0) + by * inward[1]),
  ];
  const edits: PatchOperation[] = [
    { op: "replace", path: path.replace(/soffit$/, "depth"), value: snap(depth + by) },
  ];
  for (const id of opening.linedBy ?? []) {
    const index = faces.findIndex((face) => face.id === id);
    const face = faces[index];
    if (!face) continue;
    const ends = (["from", "to"] as const).filter((end) => isBack(face.plan[end]));
    for (const end of ends)
      edits.push({ op: "replace", path: `/faces/${index}/plan/${end}`, value: moved(face.plan[end]) });
    if (ends.length !== 1) continue;
    if (face.openings.length > 0 || (face.penetrations ?? []).length > 0) return undefined;
    edits.push({ op: "replace", path: `/faces/${index}/outline`, value: longer(face, by) });
  }
  return edits;
}

/** The outline with its far end moved. */
function longer(face: Face, by: number): number[][] {
  const length = faceLength(face);
  return face.outline.map(([x, y]) => [x === length ? snap(x + by) : x, y]);
}
