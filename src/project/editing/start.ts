/** A project to begin with: one rectangular wall or a run of them, still without openings. */
import { faceFrame, turnDeg } from "../../geometry/frame.ts";
import type { Point } from "../../geometry/point.ts";
import { normaliseDegrees } from "../../units/angle.ts";
import type { Corner, ProjectDocument } from "../schema/project.ts";
import { starterProject } from "../starter.ts";
import type { Run } from "./run.ts";
import { uprightRectangle } from "./upright.ts";

interface Start {
  readonly title: string;
  readonly display: Pick<ProjectDocument["display"], "units" | "language">;
}

export interface Wall extends Start {
  /** Of the sheathing in plan, and of what is to be clad from its foot to its top (mm). */
  readonly width: number;
  readonly height: number;
}

export interface Walls extends Start {
  readonly run: Run;
  /** Of what is to be clad of each wall, from its foot to its top (mm). */
  readonly heights: readonly number[];
  /** Compass direction that the first wall looks to (degrees). */
  readonly azimuthDeg: number;
}

type FaceDocument = ProjectDocument["faces"][number];

/** Two walls that turn by this much, to within what a compass and a plan are read to, meet square (degrees). */
const SQUARE = { turnDeg: 90, within: 0.5 };

/** The starter project with a wall of that size; its other figures are typical of their kind, and say so. */
export function startWall({ width, height, ...start }: Wall): ProjectDocument {
  return startWith(start, (face) => [sized(face, { from: [0, 0], to: [width, 0] }, { width, height })]);
}

/** The same with a face for each wall of a run, named by letters in the order in which they were told. */
export function startWalls({ run, heights, azimuthDeg, ...start }: Walls): ProjectDocument {
  const { points, walls, closed } = run;
  let azimuth = azimuthDeg;
  return startPlan({
    ...start,
    walls: walls.map(({ length, turnDeg }, i): PlannedWall => {
      const plan = { from: points[i] as Point, to: points[i + 1] as Point };
      const own = { id: wallId(i), plan, azimuthDeg: normaliseDegrees(azimuth) };
      azimuth -= turnDeg;
      return { ...own, width: length, height: heights[i] ?? heights.at(-1) ?? 0, foot: 0 };
    }),
    meets: walls.flatMap((_, i): [number, number][] => {
      const next = i + 1 < walls.length ? i + 1 : closed ? 0 : i;
      return next === i ? [] : [[i, next]];
    }),
  });
}

/** A wall with its place in plan. */
export interface PlannedWall {
  readonly id: string;
  /** Building frame (mm), from the left end to the right end seen from outside. */
  readonly plan: { readonly from: Point; readonly to: Point };
  /** Compass direction that it looks to (degrees). */
  readonly azimuthDeg: number;
  /** Of what is to be clad (mm). */
  readonly width: number;
  readonly height: number;
  /** How far its foot stands over that of the starter's wall (mm). */
  readonly foot: number;
}

export interface Plan extends Start {
  readonly walls: readonly PlannedWall[];
  /** Places of two walls in the list, where the right end of the first meets the left end of the second. */
  readonly meets: readonly (readonly [left: number, right: number])[];
}

/**
 * The starter project with a face for each wall. Sheets lap at a square corner, the left face running through, and are
 * mitred at any other (common practice).
 */
export function startPlan({ walls, meets, ...start }: Plan): ProjectDocument {
  const project = startWith(start, (face) =>
    walls.map(({ id, plan, azimuthDeg, ...size }, i) => {
      const { note, ...rest } = face;
      const own = { ...rest, id, azimuthDeg };
      return sized(i === 0 ? { ...own, note } : own, plan, size);
    }),
  );
  const gap = Number(project.claddings[0]?.joint ?? 0);
  const corners = meets.flatMap(([l, r]): Corner[] => {
    const [left, right] = [project.faces[l], project.faces[r]];
    if (!left || !right) return [];
    const pair = { left: left.id, right: right.id, gap };
    return isSquare(left, right)
      ? [{ ...pair, kind: "lapped", lead: left.id }]
      : [{ ...pair, kind: "open mitre" }];
  });
  return corners.length > 0 ? { ...project, corners } : project;
}

/** A wall's letter: the first is a, the one after z is a2. */
export function wallId(index: number): string {
  const letter = String.fromCharCode("a".charCodeAt(0) + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}

function startWith(
  { title, display }: Start,
  facesOf: (starter: FaceDocument) => FaceDocument[],
): ProjectDocument {
  const starter = starterProject();
  return {
    ...starter,
    title,
    display: { ...starter.display, ...display },
    faces: starter.faces.flatMap(facesOf),
  };
}

function sized(
  face: FaceDocument,
  plan: { readonly from: Point; readonly to: Point },
  { foot: raised = 0, ...size }: { readonly width: number; readonly height: number; readonly foot?: number },
): FaceDocument {
  const foot = Number(face.outline[0]?.[1] ?? 0) + raised;
  const ground = Number(face.ground[0]?.[1] ?? foot);
  return {
    ...face,
    plan: { from: [...plan.from], to: [...plan.to] },
    ...uprightRectangle(size, { foot, ground }),
    openings: [],
  };
}

function isSquare(left: FaceDocument, right: FaceDocument): boolean {
  const frame = ({ plan }: FaceDocument) =>
    faceFrame({
      from: plan.from.map(Number) as unknown as Point,
      to: plan.to.map(Number) as unknown as Point,
    });
  const turn = Math.abs(turnDeg(frame(left), frame(right)));
  return Math.abs(turn - SQUARE.turnDeg) <= SQUARE.within;
}
