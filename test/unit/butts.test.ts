/** Where long courses are joined: the cheapest butts of all, and boards that fit their stock with the mitres they end in. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { type ButtProblem, placeButts } from "../../src/setout/boards/butts.ts";

const PROBLEM: ButtProblem = {
  run: [0, 3000],
  behind: [0, 0],
  candidates: [600, 1200, 1800, 2400],
  endGap: 4,
  maxLength: 2000,
  minLength: 1100,
  below: [],
  stagger: 600,
};

/** Every board of a course, between its long points. */
function lengthsOf({ run, behind, endGap }: ButtProblem, butts: readonly number[]): number[] {
  const ends = [run[0] - behind[0], ...butts.flatMap((at) => [at - endGap / 2, at + endGap / 2])];
  ends.push(run[1] + behind[1]);
  return ends.flatMap((at, i) => (i % 2 === 1 ? [at - (ends[i - 1] as number)] : []));
}

describe("butts of a course", () => {
  it("leave no board longer than its stock or shorter than two bays wherever any set of butts does (brute force)", () => {
    const lengths = fc.record({
      length: fc.integer({ min: 1500, max: 5000 }),
      spacing: fc.constantFrom(400, 610),
      first: fc.integer({ min: 0, max: 600 }),
      maxLength: fc.integer({ min: 1500, max: 3000 }),
      behind: fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 })),
    });
    let joined = 0;
    fc.assert(
      fc.property(lengths, ({ length, spacing, first, maxLength, behind }) => {
        const candidates: number[] = [];
        for (let at = first; at < length; at += spacing) if (at > 2 && at < length - 2) candidates.push(at);
        const problem = { ...PROBLEM, run: [0, length] as const, candidates, maxLength, behind };
        const fits = (butts: readonly number[]): boolean => {
          const boards = lengthsOf(problem, butts);
          const longest = Math.max(...boards) <= maxLength;
          return longest && (butts.length === 0 || Math.min(...boards) >= problem.minLength);
        };
        const sets = Array.from({ length: 2 ** candidates.length }, (_, set) =>
          candidates.filter((_at, i) => (set >> i) % 2 === 1),
        );
        const found = placeButts(problem);
        if (found.butts.length > 0) joined += 1;
        expect(found.misfits === 0).toBe(sets.some(fits));
        expect(fits(found.butts)).toBe(found.misfits === 0);
      }),
      { numRuns: 300, seed: 20261127 },
    );
    expect(joined).toBeGreaterThan(100);
  });

  it("part a run that its mitres' long points make longer than the stock", () => {
    const square = { ...PROBLEM, run: [0, 1990] as const, minLength: 500 };
    expect(placeButts(square).butts).toEqual([]);
    const mitred = placeButts({ ...square, behind: [19, 0] });
    expect(mitred.butts).toHaveLength(1);
    expect(mitred.misfits).toBe(0);
  });
});

describe("boards that end in the mitre of an inside corner", () => {
  it("fit the stock with the long point behind", () => {
    const document = JSON.parse(readFileSync("examples/porch.outerleaf.json", "utf8"));
    for (const corner of document.corners) {
      corner.kind = "open mitre";
      delete corner.lead;
    }
    for (const cladding of document.claddings)
      if (cladding.kind === "boards") cladding.direction = "horizontal";
    const zones = ["porch-left", "porch-back", "porch-right"].map((face) => ({ face, zone: "boards" }));
    document.rods = [{ id: "rod", zones, leads: ["porch-back"], lineTolerance: 2 }];
    for (const buildUp of document.buildUps)
      buildUp.layers = buildUp.layers.filter(({ kind }: { kind: string }) => kind !== "rail");
    const laid = () => {
      const read = readDocument(document, "porch");
      if (!read.ok) throw new Error(JSON.stringify(read.findings));
      const { facade } = design(read.project);
      const back = facade.faces.find(({ id }) => id === "porch-back");
      return (back?.pieces ?? []).filter(({ kind }) => kind === "board");
    };
    const whole = laid();
    // 20 mm boards that meet at a right angle are 20 mm longer behind than at their face; the door parts some.
    for (const { cut, outline } of whole) {
      const { x } = polygonBounds(outline);
      expect([20, 40]).toContain(Math.round(cut.length - (x[1] - x[0])));
    }
    const longest = Math.max(...whole.map(({ cut }) => cut.length));
    for (const cladding of document.claddings)
      if (cladding.kind === "boards") cladding.maxPieceLength = longest - 10;
    for (const { cut } of laid()) expect(cut.length).toBeLessThanOrEqual(longest - 10);
  });
});
