/** Returns, whatever the building and however deep its frames: each lies in its reveal, in nothing else, and is held. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import type { Rect } from "../../src/geometry/rect.ts";
import type { ProjectDocument } from "../../src/project/schema/project.ts";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";
import { buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";
import { hardBuilding, hardDocument } from "../helpers/hard-buildings/index.ts";
import { boxOf } from "../helpers/piece-boxes.ts";

const RUNS = process.env.OUTERLEAF_SOAK === undefined ? 60 : 3000;
const LIMIT_MS = process.env.OUTERLEAF_SOAK === undefined ? 240_000 : 7_200_000;

const frame = fc.record({
  // Deep in the wall, before a buck, near the cavity's back, and anywhere.
  projection: fc.oneof(
    fc.integer({ min: -80, max: -50 }),
    fc.integer({ min: 0, max: 15 }),
    fc.integer({ min: 20, max: 60 }),
    fc.integer({ min: -120, max: 60 }),
  ),
  gap: fc.option(fc.integer({ min: 0, max: 15 }), { nil: undefined }),
});
type Frame = { readonly projection: number; readonly gap: number | undefined };

/** Every window and door set as deep as told, and asked to be lined. */
function lined(document: ProjectDocument, frames: readonly Frame[]): ProjectDocument {
  let count = 0;
  return {
    ...document,
    faces: document.faces.map((face) => ({
      ...face,
      openings: face.openings.map((opening) => {
        if (opening.kind !== "window" && opening.kind !== "door") return opening;
        const { projection, gap } = frames[count++ % frames.length] as Frame;
        return { ...opening, frameProjection: projection, reveal: gap === undefined ? {} : { gap } };
      }),
    })),
  };
}

/** Trims keep within the opening's height, out of every vent's way, and are carried. */
function trimProblems(
  { vents }: FaceLayout,
  { mark, outline, supports, planProfile = [], cut }: Piece,
  region: Rect | undefined,
): string[] {
  const [left, right, bottom, top] = boxOf(outline);
  const problems: string[] = [];
  if (!region || bottom <= region.y[0] || top > region.y[1])
    problems.push(`${mark} leaves its opening's height`);
  if (supports.length === 0) problems.push(`${mark} hangs on nothing`);
  const legs = planProfile.slice(1).map(([x, z], i) => {
    const [fromX, fromZ] = planProfile[i] as readonly [number, number];
    return Math.abs(x - fromX) + Math.abs(z - fromZ);
  });
  if (legs.some((leg) => leg < 6)) problems.push(`${mark} has a leg of ${Math.min(...legs)}`);
  const flat = legs.reduce((sum, leg) => sum + leg, 0);
  if (cut.width >= flat || cut.width < flat - 2 * legs.length) problems.push(`${mark} is cut ${cut.width}`);
  for (const vent of vents)
    if (vent.y > bottom && vent.y < top && vent.x[0] < right && vent.x[1] > left)
      problems.push(`${mark} stands in a vent`);
  return problems;
}

/** What of the returns lies outside the room between frame and cladding, and openings that nothing is said of. */
function revealProblems(
  document: ProjectDocument,
  facade: Facade,
): { problems: string[]; made: number; trims: number } {
  const problems: string[] = [];
  let made = 0;
  let trims = 0;
  for (const face of facade.faces) {
    const given = document.faces.find(({ id }) => id === face.id);
    for (const opening of given?.openings ?? []) {
      if (!opening.reveal) continue;
      const { region } = face.openings.find(({ id }) => id === opening.id) ?? { region: undefined };
      const own = face.pieces.filter(
        ({ kind, mark, planProfile }) =>
          (kind === "return" || planProfile) && mark.endsWith(`-${opening.id}`),
      );
      const said = facade.findings.filter(
        ({ code, where }) => code === "S027" && where.face === face.id && where.opening === opening.id,
      );
      if (said.length !== 1) problems.push(`${opening.id}: S027 said ${said.length} times`);
      if ((said[0]?.outcome === "pass") !== own.length > 0)
        problems.push(`${opening.id}: ${own.length} returns, but ${said[0]?.outcome}`);
      made += own.length;
      for (const piece of own) if (piece.planProfile) problems.push(...trimProblems(face, piece, region));
      const returns = own.filter(({ kind }) => kind === "return");
      trims += own.length - returns.length;
      for (const { mark, outline, z } of returns) {
        const [left, right, bottom, top] = boxOf(outline);
        const inside =
          region &&
          left >= region.x[0] &&
          right <= region.x[1] &&
          bottom >= region.y[0] &&
          top <= region.y[1];
        if (!inside) problems.push(`${mark} leaves its opening`);
        if (z[0] < Number(opening.frameProjection) + Number(opening.reveal.gap ?? 0))
          problems.push(`${mark} stands in its frame`);
        const backs = face.zones
          .filter((zone) => boxOf(zone.region)[0] < right && boxOf(zone.region)[1] > left)
          .map((zone) => facade.planes.find((one) => one.face === face.id && one.zone === zone.id)?.backZ);
        if (z[1] <= z[0] || !backs.every((back) => back !== undefined && z[1] < back))
          problems.push(`${mark} reaches the cladding`);
      }
    }
  }
  return { problems, made, trims };
}

describe("returns of generated buildings", () => {
  it.each([
    ["hard", hardBuilding({ longest: 2000 }).map(hardDocument)],
    ["plain", buildingSeed.map(buildingDocument)],
  ] as const)(
    "lie in their reveals and in nothing else: %s ones",
    (_, buildings) => {
      let made = 0;
      let trims = 0;
      fc.assert(
        fc.property(buildings, fc.array(frame, { minLength: 1, maxLength: 5 }), (plain, frames) => {
          const document = lined(plain as ProjectDocument, frames);
          const project = read(document);
          const { facade } = design(project);
          const found = revealProblems(document, facade);
          made += found.made;
          trims += found.trims;
          expect([...found.problems, ...facadeProblems(project, facade)]).toEqual([]);
        }),
        { numRuns: RUNS, seed: 20261125 },
      );
      expect(made).toBeGreaterThan(RUNS / 4);
      expect(trims).toBeGreaterThan(0);
    },
    LIMIT_MS,
  );
});
