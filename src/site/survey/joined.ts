/**
 * Surveyed faces that meet at corners, their planes joined: along a corner that two faces share both stand off the drawing alike at every height, so
 * the corner line moves along the corner's bisector and the drawn mitre, lap or post still fits it (`docs/decisions/0023`).
 */

import type { Project } from "../../project/schema/project.ts";
import { faceLength } from "../../setout/corners.ts";
import { type Condition, leastCost } from "./linear-program.ts";
import { heightsOf, type SurveyedDesign } from "./packing.ts";
import { type Height, type Lean, leaning, outerPlane, type Plane, planeAt, planeOf, rowOf } from "./plane.ts";
import type { Reading } from "./reading.ts";

export interface SharedCorner {
  /** The face whose right end meets the other's left end. */
  readonly left: string;
  readonly right: string;
  /** Of the corner on the face on its left (mm, face frame); on the other it lies at nothing. */
  readonly x: number;
}

/** How far the faces' own outer planes would stand off otherwise than one another at a corner: the left one's less the right one's (mm). */
export interface CornerStep extends Pick<SharedCorner, "left" | "right"> {
  /** At the lowest and the highest crossing that was read on either face. */
  readonly foot: number;
  readonly head: number;
}

export interface JoinedPlanes {
  /** By face; those that no surveyed face meets are left out. */
  readonly planes: ReadonlyMap<string, Plane>;
  readonly corners: readonly CornerStep[];
}

export interface JoinedDesign extends SurveyedDesign {
  readonly project: SurveyedDesign["project"] & Pick<Project, "corners" | "faces">;
}

/** The planes of all faces that were read and meet, with the least packing in all of them together. */
export function joinedPlanes(
  design: JoinedDesign,
  { readings, lean }: { readonly readings: readonly Reading[]; readonly lean: Lean },
): JoinedPlanes {
  const { corners = [], faces } = design.project;
  const walls = new Map(
    [...new Set(readings.map(({ face }) => face))].flatMap((face) => {
      const heights = heightsOf(design, { face, readings });
      return heights.length > 0 ? [[face, heights] as const] : [];
    }),
  );
  const shared = corners.flatMap(({ left, right }): SharedCorner[] => {
    const face = faces.find(({ id }) => id === left);
    return face && walls.has(left) && walls.has(right) ? [{ left, right, x: faceLength(face) }] : [];
  });
  return {
    planes: joined(walls, shared, lean),
    corners: shared.flatMap((corner): CornerStep[] => {
      const [left, right] = [walls.get(corner.left) ?? [], walls.get(corner.right) ?? []];
      const [own, other] = [outerPlane(left, lean)?.plane, outerPlane(right, lean)?.plane];
      if (!own || !other) return [];
      const apart = (y: number): number => planeAt(own, corner.x, y) - planeAt(other, 0, y);
      const heights = [...left, ...right].map(({ y }) => y);
      const [foot, head] = [apart(Math.min(...heights)), apart(Math.max(...heights))];
      return [{ left: corner.left, right: corner.right, foot, head }];
    }),
  };
}

/** Outer planes with the least sum of packing, each two alike along the corner that they share. */
export function joined(
  walls: ReadonlyMap<string, readonly Height[]>,
  corners: readonly SharedCorner[],
  { mmPerM }: Lean,
): ReadonlyMap<string, Plane> {
  const faces = [...walls.keys()].filter((face) =>
    corners.some(({ left, right }) => left === face || right === face),
  );
  if (faces.length === 0) return new Map();
  const unknowns = 3 * faces.length;
  const put = (face: string, values: readonly number[], sign = 1): number[] => {
    const row = new Array<number>(unknowns).fill(0);
    for (const [i, value] of values.entries()) row[3 * faces.indexOf(face) + i] = sign * value;
    return row;
  };
  const both = (a: readonly number[], b: readonly number[]): number[] =>
    a.map((value, i) => value + (b[i] as number));
  const standOff = faces.flatMap((face) =>
    (walls.get(face) ?? []).map((one) => ({ coefficients: put(face, rowOf(one)), least: one.outward })),
  );
  const alike = corners.flatMap(({ left, right, x }): Condition[] => {
    const across = both(put(left, [1, x / 1000, 0]), put(right, [1, 0, 0], -1));
    const up = both(put(left, [0, 0, 1]), put(right, [0, 0, 1], -1));
    return [across, up].flatMap((row) => [
      { coefficients: row, least: 0 },
      { coefficients: row.map((value) => -value), least: 0 },
    ]);
  });
  const upright = faces.flatMap((face) =>
    leaning(mmPerM, 3).map(({ coefficients, least }) => ({ coefficients: put(face, coefficients), least })),
  );
  const cost = standOff.reduce<number[]>(
    (sum, { coefficients }) => both(sum, coefficients),
    new Array<number>(unknowns).fill(0),
  );
  const found = leastCost(cost, [...standOff, ...alike, ...upright]);
  if (found.kind !== "best") return new Map();
  return new Map(faces.map((face, i) => [face, planeOf(found.x.slice(3 * i, 3 * i + 3))]));
}
