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

/**
 * The same with a face for each wall of a run, named by letters in the order in which they were told. Sheets lap at a
 * square corner, the left face running through, and are mitred at any other (common practice).
 */
export function startWalls({ run, heights, azimuthDeg, ...start }: Walls): ProjectDocument {
  const { points, walls, closed } = run;
  const ids = walls.map((_, i) => wallId(i));
  let azimuth = azimuthDeg;
  const project = startWith(start, (face) =>
    walls.map(({ length, turnDeg }, i) => {
      const { note, ...rest } = face;
      const plan = { from: points[i] as Point, to: points[i + 1] as Point };
      const own = { ...rest, id: ids[i] as string, azimuthDeg: normaliseDegrees(azimuth) };
      azimuth -= turnDeg;
      const height = heights[i] ?? heights.at(-1) ?? 0;
      return sized(i === 0 ? { ...own, note } : own, plan, { width: length, height });
    }),
  );
  const gap = Number(project.claddings[0]?.joint ?? 0);
  const corners = project.faces.flatMap((left, i): Corner[] => {
    const right = project.faces[i + 1] ?? (closed ? project.faces[0] : undefined);
    if (!right || right === left) return [];
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
  size: { readonly width: number; readonly height: number },
): FaceDocument {
  const foot = Number(face.outline[0]?.[1] ?? 0);
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
