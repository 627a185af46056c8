/** Courses round corners: of faces that share a rod, the boards that meet at a corner lie on the same lines. */
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";
import { boxOf, depthShared } from "./piece-boxes.ts";

/** Courses line up to this at a corner (mm). */
const LINES_UP_WITHIN_MM = 0.5;
/** Plans meet within this (mm), and a board's end within this of the reach of its zone is at the corner. */
const NEAR_MM = 1;

export interface CornerCourses {
  /** Edges of boards that were compared. */
  readonly compared: number;
  readonly problems: readonly string[];
}

export function cornerCourses(project: Project, facade: Facade): CornerCourses {
  const problems: string[] = [];
  let compared = 0;
  for (const left of facade.faces) {
    for (const right of facade.faces) {
      if (left === right || !meet(project, left.id, right.id)) continue;
      const a = endBoards(left, "right");
      const b = endBoards(right, "left");
      for (const rod of facade.rods) {
        for (const one of a.filter((board) => isOn(rod, board.piece))) {
          for (const other of b.filter((board) => isOn(rod, board.piece))) {
            if (depthShared(one.y, other.y) <= LINES_UP_WITHIN_MM) continue;
            for (const side of [0, 1] as const) {
              // What an edge of the zone or of a clearance cuts ends there, and not on its course's line.
              if (one.cut[side] || other.cut[side]) continue;
              compared += 1;
              const off = one.y[side] - other.y[side];
              if (Math.abs(off) > LINES_UP_WITHIN_MM)
                problems.push(`${one.piece.mark} and ${other.piece.mark} miss by ${off}`);
            }
          }
        }
      }
    }
  }
  return { compared, problems };
}

function meet({ faces }: Project, left: string, right: string): boolean {
  const to = faces.find(({ id }) => id === left)?.plan.to;
  const from = faces.find(({ id }) => id === right)?.plan.from;
  return !!to && !!from && Math.hypot(to[0] - from[0], to[1] - from[1]) <= NEAR_MM;
}

function isOn(rod: Facade["rods"][number], { face, zone }: Piece): boolean {
  return rod.zones.some((one) => one.face === face && one.zone === zone);
}

interface EndBoard {
  readonly piece: Piece;
  readonly y: readonly [number, number];
  /** Whether its lower and its upper edge are cut otherwise than on a course's line. */
  readonly cut: readonly [boolean, boolean];
}

function endBoards(face: FaceLayout, end: "left" | "right"): EndBoard[] {
  const { outline, clearances } = face;
  const reach = boxOf(outline)[end === "left" ? 0 : 1];
  const inTheWay = clearances.map(({ region }) => boxOf(region));
  return face.pieces
    .filter(({ kind, outline: own }) => kind === "board" && touches(boxOf(own), reach, end))
    .map((piece) => {
      const [x0, x1, low, high] = boxOf(piece.outline);
      const raked = piece.outline.some(([ax, ay], i) => {
        const [bx, by] = piece.outline[(i + 1) % piece.outline.length] as readonly [number, number];
        return ax !== bx && ay !== by;
      });
      const region = face.zones.find(({ id }) => id === piece.zone)?.region ?? outline;
      const edges = [
        ...region.map(([, y]) => y),
        ...inTheWay.filter(([l, r]) => l < x1 && r > x0).flatMap(([, , b, t]) => [b, t]),
      ];
      const cutAt = (y: number): boolean => raked || edges.some((edge) => Math.abs(edge - y) < 1e-6);
      return { piece, y: [low, high] as const, cut: [cutAt(low), cutAt(high)] as const };
    });
}

function touches(box: readonly number[], reach: number, end: "left" | "right"): boolean {
  return Math.abs((box[end === "left" ? 0 : 1] as number) - reach) <= NEAR_MM;
}
