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
  ducts: [],
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

describe("butts beside ducts", () => {
  it("lie clear of them wherever a set of butts that fits the stock does, and name the duct where none does (brute force)", () => {
    const runs = fc.record({
      length: fc.integer({ min: 2500, max: 4500 }),
      spacing: fc.constantFrom(400, 610),
      maxLength: fc.integer({ min: 1800, max: 3000 }),
      ducts: fc.array(fc.tuple(fc.integer({ min: 600, max: 3000 }), fc.integer({ min: 100, max: 900 })), {
        minLength: 1,
        maxLength: 3,
      }),
    });
    let [moved, left] = [0, 0];
    fc.assert(
      fc.property(runs, ({ length, spacing, maxLength, ducts }) => {
        const candidates: number[] = [];
        for (let at = 300; at < length - 2; at += spacing) candidates.push(at);
        const chords = ducts.map(([from, width], i) => ({ of: `D${i}`, x: [from, from + width] as const }));
        const problem = { ...PROBLEM, run: [0, length] as const, candidates, maxLength, ducts: chords };
        const isAt = (butt: number) => chords.some(({ x }) => butt > x[0] && butt < x[1]);
        const fitting = Array.from({ length: 2 ** candidates.length }, (_, set) =>
          candidates.filter((_at, i) => (set >> i) % 2 === 1),
        ).filter((butts) => {
          const boards = lengthsOf(problem, butts);
          if (Math.max(...boards) > maxLength) return false;
          return butts.length === 0 || Math.min(...boards) >= problem.minLength;
        });
        const found = placeButts(problem);
        expect(found.besideDucts.map(({ at }) => at)).toEqual(found.butts.filter(isAt));
        if (fitting.length === 0) return;
        expect(found.misfits).toBe(0);
        expect(found.besideDucts).toHaveLength(
          Math.min(...fitting.map((butts) => butts.filter(isAt).length)),
        );
        moved += found.moved.length;
        left += found.besideDucts.length;
      }),
      { numRuns: 300, seed: 20261205 },
    );
    expect(moved).toBeGreaterThan(30);
    expect(left).toBeGreaterThan(30);
  });

  const withTaps = (taps: readonly { x: number; y: number }[]) => {
    const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
    const west = document.faces.find(({ id }: { id: string }) => id === "west");
    west.penetrations = taps.map((one, i) => ({ id: `T${i}`, kind: "tap", diameter: 40, ...one }));
    const read = readDocument(document, "taps");
    if (!read.ok) throw new Error(JSON.stringify(read.findings));
    const { facade, findings } = design(read.project);
    const face = facade.faces.find(({ id }) => id === "west");
    const butts = (face?.joints ?? []).filter(({ kind }) => kind === "butt");
    const told = findings.filter(({ says }) => says.key === "setout.butts.at-duct");
    return { face, told, butts: butts.map(({ region }) => polygonBounds(region)) };
  };

  it("on a wall move to another batten, and the boards say which butt was passed over", () => {
    const [, , one] = withTaps([]).butts;
    if (!one) throw new Error("the west wall's courses are joined");
    const at = { x: (one.x[0] + one.x[1]) / 2, y: one.y[1] };
    const { face, butts, told: findings } = withTaps([at]);
    // 40 of tap, 10 round it and the batten's width to each side: the chord is widest at the course's edge.
    const near = butts.filter(
      ({ x, y }) => y[0] < at.y + 30 && y[1] > at.y - 30 && Math.abs((x[0] + x[1]) / 2 - at.x) < 90,
    );
    expect(near).toEqual([]);
    expect(findings).toEqual([]);
    const told = (face?.pieces ?? []).filter(({ why }) => why.rule.key === "setout.why.course.clear-of-duct");
    expect(told.length).toBeGreaterThanOrEqual(2);
    expect(told[0]?.why.runnerUp).toMatchObject({
      key: "setout.why.course.butt-at-duct",
      values: { at: at.x, of: "T0" },
    });
  });

  it("are told where a duct stands at every batten", () => {
    const { face, butts } = withTaps([]);
    const y = butts[2]?.y[1] ?? Number.NaN;
    const studs = (face?.solids ?? [])
      .filter(({ kind }) => kind === "stud")
      .map(({ region }) => polygonBounds(region).x);
    const middles = [...new Set(studs.map(([from, to]) => (from + to) / 2))].filter(
      (x) => x > 200 && x < 4600,
    );
    const { told } = withTaps(middles.map((x) => ({ x, y })));
    expect(told.length).toBeGreaterThan(0);
    expect(told[0]).toMatchObject({ code: "S024", outcome: "attention", where: { face: "west" } });
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
