/** Every facade, whatever the building: nothing overlaps, nothing is missing, every screw holds. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import { buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";

const RUNS = process.env.OUTERLEAF_SOAK ? 2000 : 40;
const LIMIT_MS = process.env.OUTERLEAF_SOAK ? 3_600_000 : 120_000;

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

  it("comes out the same, byte for byte", () => {
    expect(JSON.stringify(design(project).facade)).toBe(JSON.stringify(facade));
  });
});

describe("generated facades", () => {
  it(
    "have nothing that overlaps, is missing, or hangs on air",
    () => {
      fc.assert(
        fc.property(buildingSeed, (seed) => {
          const project = read(buildingDocument(seed));
          expect(facadeProblems(project, design(project).facade)).toEqual([]);
        }),
        { numRuns: RUNS, seed: 20261125 },
      );
    },
    LIMIT_MS,
  );

  it(
    "keep every mark of a face when another face is edited",
    () => {
      fc.assert(
        fc.property(buildingSeed, fc.integer({ min: 1, max: 40 }), (seed, by) => {
          const document = buildingDocument(seed);
          // The first face leads the rod; the last one's openings move along it, and stay clear of each other.
          const edited = structuredClone(document);
          const last = edited.faces.at(-1);
          for (const opening of last?.openings ?? []) {
            opening.x = [Number(opening.x[0]) + by, Number(opening.x[1]) + by];
          }
          const marks = (doc: typeof document): string[][] =>
            design(read(doc))
              .facade.faces.slice(0, -1)
              .map(({ pieces }) => pieces.map(({ mark }) => mark));
          expect(marks(edited)).toEqual(marks(document));
        }),
        { numRuns: Math.min(RUNS, 200) / 4, seed: 20261126 },
      );
    },
    LIMIT_MS,
  );
});
