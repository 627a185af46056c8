/** The plane search against a plain loop over everything, on small stocks. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ProjectDocument } from "../../src/project/schema/project.ts";
import { ALL, exampleDocument, search } from "../helpers/plane-search.ts";
import { bruteForce, type SmallWall } from "./plane-search-brute.ts";

const RUNS = process.env.OUTERLEAF_SOAK ? 2000 : 50;

const halves = (min: number, max: number) => fc.integer({ min: min * 2, max: max * 2 }).map((n) => n / 2);
const some = (one: fc.Arbitrary<number>, minLength: number, maxLength: number) =>
  fc.uniqueArray(one, { minLength, maxLength });

const wall: fc.Arbitrary<SmallWall> = fc.record({
  battens: some(halves(18, 45), 1, 3),
  packers: some(halves(1, 7), 0, 2),
  screws: fc.record({
    sheet: some(halves(30, 50), 1, 4),
    board: some(halves(38, 65), 1, 4),
    batten: some(halves(110, 170), 1, 3),
  }),
  insulation: halves(20, 60),
  sheathing: halves(9, 15),
  gasket: fc.constantFrom(0.5, 1, 1.5),
  board: halves(16, 28),
  sheet: halves(6, 12),
  frame: halves(20, 110),
  within: fc.constantFrom(0, 0.5, 1, 2),
  cavityMin: fc.constantFrom(10, 20, 25),
  bite: fc.record({ cladding: fc.constantFrom(15, 25), studs: fc.constantFrom(32, 38) }),
  planing: fc.record({
    least: fc.constantFrom(0, -2, -1.5),
    most: fc.constantFrom(0, 1, 4),
    step: fc.constantFrom(0.5, 1, 1.5),
  }),
  lots: some(halves(18, 30), 1, 3),
});

/** The demo's front alone, of the materials of a small wall. */
function documentOf(small: SmallWall): ProjectDocument {
  const document = exampleDocument();
  document.structure.sheathingThickness = small.sheathing;
  document.stock.battens = small.battens.map((thickness) => ({
    ...{ id: `b${thickness * 2}`, thickness, width: 64, lengths: [3660], pricePerM: 2 },
  }));
  document.stock.packers = [...small.packers];
  document.stock.screws = (["sheet", "board", "batten"] as const).flatMap((use) =>
    small.screws[use].map((length) => ({
      id: `${use}-${length * 2}`,
      use,
      diameter: 5,
      headDiameter: 10,
      length,
    })),
  );
  const first = (use: "sheet" | "board" | "batten") => `${use}-${(small.screws[use][0] ?? 0) * 2}`;
  const insulation = {
    kind: "insulation",
    thickness: small.insulation,
    material: "wool",
    bearing: "firm",
  } as const;
  const batten = { kind: "batten", stock: `b${(small.battens[0] ?? 0) * 2}` } as const;
  const gasket = { kind: "gasket", thickness: small.gasket } as const;
  document.buildUps = [
    { id: "boards", battenScrew: first("batten"), layers: [insulation, batten] },
    { id: "sheets", battenScrew: first("batten"), layers: [insulation, batten, gasket] },
  ];
  const [boards, sheets] = document.claddings;
  if (boards?.kind !== "boards" || sheets?.kind !== "sheets")
    throw new Error("the demo has boards and sheets");
  const lots = small.lots.map((thickness) => ({ id: `L${thickness * 2}`, thickness }));
  document.claddings = [
    {
      ...boards,
      thickness: small.board,
      widths: [100],
      screw: first("board"),
      lots: lots.map(({ id }) => id),
    },
    { ...sheets, thickness: small.sheet, screw: first("sheet") },
  ];
  document.pile = {
    lots: lots.map(({ id }) => ({ id, from: "a barn", species: "white-spruce" })),
    boards: lots.map(({ id, thickness }) => ({
      id: `${id}a`,
      lot: id,
      length: 2400,
      width: 150,
      thickness,
      defects: [],
    })),
  };
  const front = document.faces.find(({ id }) => id === "front");
  if (!front) throw new Error("the demo has a front");
  front.frameProjection = small.frame;
  front.zones.forEach((zone, i) => {
    zone.buildUp = i === 0 ? "boards" : "sheets";
  });
  document.faces = [front];
  delete document.corners;
  delete document.survey;
  delete document.crews;
  document.rods = [
    { id: "rod", zones: [{ face: "front", zone: "boards" }], leads: ["front"], lineTolerance: 2 },
  ];
  document.limits.facesMeetWithin.value = small.within;
  document.limits.cavityMin.value = small.cavityMin;
  document.limits.screwBite.cladding.value = small.bite.cladding;
  document.limits.screwBite.studs.value = small.bite.studs;
  return document;
}

describe("against a plain loop over everything", () => {
  it("finds the same combinations, the same broken rules in each and the same best", () => {
    let passing = 0;
    let failing = 0;
    fc.assert(
      fc.property(wall, (small) => {
        const brute = bruteForce(small);
        const found = search(documentOf(small), { planing: small.planing, show: ALL });
        const names = [...found.passing, ...found.failing].map((one): [string, string] => {
          const stacks = one.buildUps.map(({ battens, packers }) => {
            const thickness = Number(battens[0]?.slice(1)) / 2;
            return `${thickness}+${packers.reduce((sum, packer) => sum + packer, 0)}`;
          });
          const rules = new Set(one.failed.map(({ rule }) => rule));
          return [`${stacks.join("|")} ${one.claddings[0]?.thickness}`, [...rules].sort().join(" ")];
        });
        expect(found.counts.all).toBe(brute.all);
        expect(names.sort()).toEqual([...brute.meeting].sort());
        const [best] = found.passing;
        const { broken, packers, planing } = best?.merit ?? {};
        expect(best && { broken, packers, planing }).toEqual(brute.best);
        passing += found.counts.passing;
        failing += found.counts.failing;
      }),
      { numRuns: RUNS, seed: 20261125 },
    );
    // The walls are such that both come up.
    expect(Math.min(passing, failing)).toBeGreaterThan(20);
  });
});
