import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/project/edit.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { type BuildingSeed, buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { rodOf } from "../unit/rods-harness.ts";

const SEED = 6902;

/** The generated building with boards that seldom fit. */
function tight(seed: BuildingSeed, boards: { widths: number[]; gapBand: [number, number]; most: number }) {
  const document = buildingDocument(seed);
  return {
    ...document,
    claddings: document.claddings.map((one) =>
      one.kind === "boards" && one.direction === "horizontal"
        ? { ...one, widths: boards.widths, gapBand: boards.gapBand, maxEqualWidthsTouching: boards.most }
        : one,
    ),
  };
}

const boards = fc.record({
  widths: fc.uniqueArray(fc.integer({ min: 78, max: 145 }), { minLength: 1, maxLength: 2 }),
  gapBand: fc.integer({ min: 5, max: 9 }).map((least): [number, number] => [least, least + 2]),
  most: fc.integer({ min: 1, max: 12 }),
});

describe("the mends offered for generated buildings", () => {
  it("are files that read, whose rod is solved", () => {
    const seen = { refused: 0, offered: 0, moved: 0, ripped: 0 };
    fc.assert(
      fc.property(buildingSeed, boards, (seed, asked) => {
        const document = tight(seed, asked);
        const project = read(document);
        if ((project.rods ?? []).length === 0) return;
        const { findings } = rodOf(project, false);
        for (const finding of findings) {
          if (finding.code !== "S001" || !finding.where.path?.startsWith("/rods/")) continue;
          if (finding.outcome !== "fail") continue;
          seen.refused += 1;
          for (const { says, edit } of finding.choices ?? []) {
            if (edit === undefined) continue;
            const patched = applyPatch(document, edit);
            if (!patched.ok) throw new Error(`refused: ${say(says, ENGLISH_MM)}`);
            const mended = read(patched.document as typeof document);
            const after = rodOf(mended, false);
            expect(
              after.findings
                .filter(({ code, where }) => code === "S001" && where.path === finding.where.path)
                .map(({ outcome }) => outcome),
              say(says, ENGLISH_MM),
            ).not.toContain("fail");
            seen.offered += 1;
            if (edit.some(({ path }) => path.startsWith("/faces/"))) seen.moved += 1;
            if (edit.some(({ path }) => path.endsWith("/rips"))) seen.ripped += 1;
          }
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
    expect(seen.refused).toBeGreaterThan(20);
    expect(seen.offered).toBeGreaterThan(50);
    expect(seen.moved).toBeGreaterThan(5);
    expect(seen.ripped).toBeGreaterThan(5);
  });
});
