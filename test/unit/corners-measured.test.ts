/**
 * Corners of every example measured in the building's own frame: how far apart the claddings that meet there stand, whichever way the corner
 * is made, and how level their courses run round it. The corner's gap is the file's; 0.5 mm is what a master lines up to (common practice).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { faceFrame, inBuilding } from "../../src/geometry/frame.ts";
import { readProject } from "../../src/project/read.ts";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";
import { boxOf } from "../helpers/piece-boxes.ts";

type Spot = readonly [number, number, number];

const WITHIN_MM = 0.5;

const isClad = ({ kind }: Piece): boolean => kind === "board" || kind === "sheet";

/** The piece's end at a height as the two points of its cut, outer and inner, in the building. */
function endAt(face: FaceLayout, piece: Piece, end: "left" | "right"): readonly [Spot, Spot] {
  const [left, right, bottom, top] = boxOf(piece.outline);
  const x = end === "left" ? left : right;
  const [back, front] = piece.z;
  const by = (front - back) * Math.tan((piece.ends[end].angleDeg * Math.PI) / 180);
  const y = (bottom + top) / 2;
  const at = (px: number, z: number): Spot => {
    const [bx, by3, bz] = inBuilding(face.frame, { x: px, y, z });
    return [bx, by3, bz];
  };
  return [at(x, front), at(end === "left" ? x + by : x - by, back)];
}

const flat = ([x, y]: Spot): readonly [number, number] => [x, y];

function toSegment(p: readonly [number, number], [a, b]: readonly [Spot, Spot]): number {
  const [ax, ay] = flat(a);
  const [bx, by] = flat(b);
  const length2 = (bx - ax) ** 2 + (by - ay) ** 2;
  const t =
    length2 === 0
      ? 0
      : Math.max(0, Math.min(1, ((p[0] - ax) * (bx - ax) + (p[1] - ay) * (by - ay)) / length2));
  return Math.hypot(p[0] - ax - t * (bx - ax), p[1] - ay - t * (by - ay));
}

/** The sides of a piece's plan: its outer and inner plane and its two ends. */
function sides(face: FaceLayout, piece: Piece): (readonly [Spot, Spot])[] {
  const [l, r] = [endAt(face, piece, "left"), endAt(face, piece, "right")];
  return [l, r, [l[0], r[0]], [l[1], r[1]]];
}

function apart(a: readonly [FaceLayout, Piece], b: readonly [FaceLayout, Piece]): number {
  const one = sides(...a);
  const other = sides(...b);
  const to = (from: typeof one, on: typeof one): number =>
    Math.min(...from.flat().flatMap((p) => on.map((side) => toSegment(flat(p), side))));
  return Math.min(to(one, other), to(other, one));
}

function endPieces(face: FaceLayout, end: "left" | "right"): Piece[] {
  const reach = boxOf(face.outline)[end === "left" ? 0 : 1];
  return face.pieces.filter(
    (piece) => isClad(piece) && Math.abs(boxOf(piece.outline)[end === "left" ? 0 : 1] - reach) < 0.01,
  );
}

const overlapY = (a: Piece, b: Piece): boolean => {
  const [, , a0, a1] = boxOf(a.outline);
  const [, , b0, b1] = boxOf(b.outline);
  return Math.min(a1, b1) - Math.max(a0, b0) > 1;
};

function example(name: string) {
  const read = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!read.ok) throw new Error(`${name} does not read`);
  return { project: read.project, facade: design(read.project).facade };
}

const faceOf = ({ faces }: Facade, id: string): FaceLayout =>
  faces.find((one) => one.id === id) as FaceLayout;

const EXAMPLES = ["atelier-bouleau", "l-plan", "two-storey", "imperial", "porch"].map((name) => ({
  name,
  ...example(name),
}));
const CORNERS = EXAMPLES.flatMap(({ name, project, facade }) =>
  (project.corners ?? []).map((corner) => {
    const outward = (id: string) => {
      const face = project.faces.find((one) => one.id === id);
      if (!face) throw new Error(`no face ${id}`);
      return faceFrame(face.plan).outward;
    };
    const [from, to] = [outward(corner.left), outward(corner.right)];
    // To the left of the way that the first wall looks: the second turns towards it at an inside corner.
    const turn = from[0] * to[1] - from[1] * to[0];
    return { name, facade, corner, kind: corner.kind, side: turn > 0 ? "outside" : "inside" };
  }),
);

describe("corners as they are made", () => {
  it("are of every kind: open mitre, lapped outside and inside, post", () => {
    expect(new Set(CORNERS.map(({ kind, side }) => `${kind} ${side}`))).toEqual(
      new Set(["open mitre outside", "lapped outside", "lapped inside", "post outside"]),
    );
  });

  it.each(
    CORNERS.map(
      (one) =>
        [`${one.name}: ${one.corner.left} to ${one.corner.right}, ${one.kind}, ${one.side}`, one] as const,
    ),
  )("%s: the claddings stand the corner's gap apart", (_, { facade, corner }) => {
    const [a, b] = [faceOf(facade, corner.left), faceOf(facade, corner.right)];
    const posts = a.pieces.filter(({ kind }) => kind === "post");
    const [ends, starts] = [endPieces(a, "right"), endPieces(b, "left")];
    const gaps: number[] = [];
    for (const one of ends)
      for (const other of starts.filter((piece) => overlapY(piece, one))) {
        if (corner.kind !== "post") gaps.push(apart([a, one], [b, other]));
        for (const post of corner.kind === "post" ? posts.filter((piece) => overlapY(piece, one)) : [])
          gaps.push(apart([a, one], [a, post]), apart([b, other], [a, post]));
      }
    expect(gaps.length).toBeGreaterThan(0);
    for (const gap of gaps) expect(Math.abs(gap - corner.gap)).toBeLessThanOrEqual(WITHIN_MM);
  });

  it("carry the courses of faces on one rod round, each as high on both sides", () => {
    let compared = 0;
    for (const { facade, corner } of CORNERS) {
      const [a, b] = [faceOf(facade, corner.left), faceOf(facade, corner.right)];
      const shared = facade.rods.find(({ zones }) =>
        [a.id, b.id].every((id) => zones.some(({ face }) => face === id)),
      );
      if (!shared) continue;
      for (const one of endPieces(a, "right").filter(({ kind }) => kind === "board"))
        for (const other of endPieces(b, "left").filter(
          ({ kind, course }) => kind === "board" && course === one.course,
        )) {
          if (one.outline.length > 4 || other.outline.length > 4) continue;
          const z = (face: FaceLayout, { outline }: Piece, y: 2 | 3): number =>
            inBuilding(face.frame, { x: 0, y: boxOf(outline)[y], z: 0 })[2];
          for (const edge of [2, 3] as const)
            expect(Math.abs(z(a, one, edge) - z(b, other, edge))).toBeLessThanOrEqual(WITHIN_MM);
          compared += 1;
        }
    }
    expect(compared).toBeGreaterThan(30);
  });
});
