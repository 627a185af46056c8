/** Every facade, whatever the building: nothing overlaps, nothing is missing, every screw holds. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import type { Face, Opening, Project } from "../../src/project/schema/project.ts";
import { buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { cornerCourses } from "../helpers/corner-courses.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";
import { hardBuilding, hardDocument } from "../helpers/hard-buildings/index.ts";

const SOAK = process.env.OUTERLEAF_SOAK !== undefined;
const RUNS = SOAK ? 5000 : 300;
const PLAIN_RUNS = SOAK ? 2000 : 40;
const EDIT_RUNS = SOAK ? 500 : 30;
const LIMIT_MS = SOAK ? 7_200_000 : 240_000;
/** Walls as long as a house's take long to set out: many small ones find more. */
const building = hardBuilding({ longest: SOAK ? 3600 : 2000 });

const EXAMPLES = ["atelier-bouleau", "l-plan", "two-storey", "imperial", "porch"];

function example(name: string) {
  const result = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!result.ok) throw new Error(`${name} does not read`);
  return result.project;
}

describe.each(EXAMPLES)("the facade of %s", (name) => {
  const project = example(name);
  const { facade } = design(project);

  it("has nothing that overlaps, is missing, or hangs on air", () => {
    expect(facadeProblems(project, facade)).toEqual([]);
  });

  it("carries its courses round the corners", () => {
    expect(cornerCourses(project, facade).problems).toEqual([]);
  });

  it("comes out the same, byte for byte", () => {
    expect(JSON.stringify(design(project).facade)).toBe(JSON.stringify(facade));
  });
});

describe("the check of courses round corners", () => {
  const project = example("two-storey");
  const { facade } = design(project);

  it("compares both faces' courses and sees one that is a millimetre off", () => {
    expect(cornerCourses(project, facade).compared).toBeGreaterThan(50);
    const moved = facade.faces.map((face) => ({
      ...face,
      pieces: face.pieces.map((piece) =>
        piece.kind === "board" && piece.course === 103 && face.id === "east"
          ? { ...piece, outline: piece.outline.map(([x, y]) => [x, y + 1] as const) }
          : piece,
      ),
    }));
    expect(cornerCourses(project, { ...facade, faces: moved }).problems).toHaveLength(2);
  });
});

describe("generated facades", () => {
  it(
    "have nothing that overlaps, is missing, or hangs on air, and carry their courses round the corners",
    () => {
      let compared = 0;
      fc.assert(
        fc.property(building, (seed) => {
          const project = read(hardDocument(seed));
          const { facade } = design(project);
          expect(facadeProblems(project, facade)).toEqual([]);
          const courses = cornerCourses(project, facade);
          compared += courses.compared;
          expect(courses.problems).toEqual([]);
        }),
        { numRuns: RUNS, seed: 20261127 },
      );
      expect(compared).toBeGreaterThan(RUNS);
    },
    LIMIT_MS,
  );

  it(
    "come out the same, byte for byte",
    () => {
      fc.assert(
        fc.property(building, (seed) => {
          const once = JSON.stringify(design(read(hardDocument(seed))).facade);
          expect(JSON.stringify(design(read(hardDocument(seed))).facade)).toBe(once);
        }),
        { numRuns: EDIT_RUNS, seed: 20261128 },
      );
    },
    LIMIT_MS,
  );

  it(
    "are as whole on plain houses of full size",
    () => {
      fc.assert(
        fc.property(buildingSeed, (seed) => {
          const project = read(buildingDocument(seed));
          expect(facadeProblems(project, design(project).facade)).toEqual([]);
        }),
        { numRuns: PLAIN_RUNS, seed: 20261125 },
      );
    },
    LIMIT_MS,
  );

  it(
    "keep every mark of a face when another face is edited",
    () => {
      fc.assert(
        fc.property(building, fc.integer({ min: 1, max: 40 }), (seed, by) => {
          const project = read(hardDocument(seed));
          // Ducts stay out of the moved openings' way, before and after.
          const face = project.faces.findLast(
            ({ openings }) => openings.length > 0 && !openings.some(isLined),
          );
          if (!face) return;
          const before = { ...project, faces: replaced(project, { ...face, penetrations: [] }) };
          const after = { ...project, faces: replaced(project, { ...face, ...movedBy(face, by) }) };
          const others = (one: Project): string[][] =>
            design(one)
              .facade.faces.filter(({ id }) => id !== face.id)
              .map(({ pieces }) => pieces.map(({ mark }) => mark));
          expect(others(after)).toEqual(others(before));
        }),
        { numRuns: EDIT_RUNS, seed: 20261126 },
      );
    },
    LIMIT_MS,
  );
});

const isLined = ({ linedBy }: Opening): boolean => linedBy !== undefined;

function replaced({ faces }: Project, face: Face): Face[] {
  return faces.map((one) => (one.id === face.id ? face : one));
}

/** All openings a little to the right, or to the left where there is no room; heights stay, and so does the rod. */
function movedBy({ openings, outline }: Face, by: number): Pick<Face, "openings" | "penetrations"> {
  const right = Math.max(...outline.map(([x]) => x));
  const fits = openings.every(({ x }) => x[1] + by < right);
  const step = fits ? by : -Math.min(by, ...openings.map(({ x }) => x[0]));
  return {
    penetrations: [],
    openings: openings.map((one) => ({ ...one, x: [one.x[0] + step, one.x[1] + step] })),
  };
}
