/**
 * The search for sheet joints against plain enumeration, and against lower bounds: its own, proven in the words of
 * `src/setout/sheets/bound.ts`, and published ones, whose sources `sheet-bounds.ts` names.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planColumns } from "../../src/setout/sheets/plan.ts";
import { buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { publishedBound } from "../helpers/sheet-bounds.ts";
import { faceZone, type SmallFace, smallFace } from "../helpers/sheet-faces.ts";
import { sheetZones } from "../helpers/sheet-zones.ts";
import { BruteForce, GridBruteForce } from "./sheet-layout-brute.ts";
import { OffsetBruteForce } from "./sheet-offset-brute.ts";

const SOAK = process.env.OUTERLEAF_SOAK !== undefined;
const RUNS = SOAK ? 3000 : 300;
const LIMIT_MS = SOAK ? 3_600_000 : 120_000;
/** The sums are taken in another order, which leaves some 1e-12; the least that a millimetre makes is 1e-8. */
const DIGITS = 9;

/** Upright, lying and either way, with a pinned line, two level ones and a forbidden band on some. */
const wishedFace = (pattern: NonNullable<SmallFace["pattern"]>, size: Parameters<typeof smallFace>[0]) =>
  fc
    .record({
      face: smallFace(size),
      pin: fc.option(fc.integer({ min: 100, max: 1200 })),
      level: fc.option(fc.integer({ min: 200, max: 1300 })),
      above: fc.option(fc.integer({ min: 300, max: 900 })),
      band: fc.option(fc.tuple(fc.integer({ min: 100, max: 1200 }), fc.integer({ min: 50, max: 700 }))),
    })
    .map(({ face, pin, level, above, band }): SmallFace => {
      const bands: [number, number][] = band ? [[band[0], band[0] + band[1]]] : [];
      // A pin in a band is refused, which is another test's matter.
      const isFree = pin !== null && !bands.some(([from, to]) => pin + 5 > from && pin - 5 < to);
      const levels = level === null ? [] : above === null ? [level] : [level, level + above];
      const pinned = { x: isFree ? [pin] : [], y: levels };
      return { ...face, pattern, pinned, forbidden: { x: bands } };
    });

function expectTheCheapest(face: SmallFace): void {
  const zone = faceZone(face);
  const plan = planColumns(zone);
  const [best, next] = new BruteForce(zone).twoBest();
  expect(plan.score.total).toBeCloseTo(best ?? Number.NaN, DIGITS);
  if (next === undefined) expect(plan.runnerUp).toBeUndefined();
  else expect(plan.runnerUp?.score.total).toBeCloseTo(next, DIGITS);
}

function expectTheCheapestGrid(face: SmallFace): void {
  const zone = faceZone({ ...face, pattern: "grid" });
  expect(planColumns(zone).score.total).toBeCloseTo(new GridBruteForce(zone).best(), DIGITS);
}

function expectTheCheapestOffset(face: SmallFace): void {
  const zone = faceZone({ ...face, pattern: "offset" });
  const { total } = planColumns(zone).score;
  expect(new OffsetBruteForce(zone, total).best()).toBeCloseTo(total, DIGITS);
}

describe("small faces, against every set of joints and level lines", () => {
  it.each([
    {
      pattern: "stacked",
      size: { widest: 2100 },
      what: "as cheap, and the runner-up the next cheapest",
      expectIt: expectTheCheapest,
      seed: 20261125,
    },
    {
      pattern: "grid",
      size: { widest: 1900 },
      what: "as cheap as any set of lines that run through",
      expectIt: expectTheCheapestGrid,
      seed: 20261128,
    },
    {
      pattern: "offset",
      // Of many rows not all stacks can be tried.
      size: { widest: 1900, highest: 2500 },
      what: "as cheap, crowded neighbours counted",
      expectIt: expectTheCheapestOffset,
      seed: 20261129,
    },
  ] as const)(
    "$pattern: $what",
    ({ pattern, size, expectIt, seed }) => {
      fc.assert(fc.property(smallFace(size), expectIt), { numRuns: RUNS, seed });
      fc.assert(fc.property(wishedFace(pattern, size), expectIt), { numRuns: RUNS / 3, seed: seed + 1 });
    },
    LIMIT_MS,
  );
});

describe("the lower bound on the number of sheets", () => {
  it(
    "is never above the fewest sheets of any layout, notched or not",
    () => {
      fc.assert(
        fc.property(smallFace({ widest: 2100 }), (face) => {
          const zone = faceZone(face);
          const { bound } = planColumns(zone);
          const brute = new BruteForce(zone);
          expect(bound.least).toBeLessThanOrEqual(brute.fewestSheets(true));
          const unnotched = brute.fewestSheets(false);
          expect(bound.unnotched).toBeLessThanOrEqual(unnotched);
          expect(publishedBound(zone)).toBeLessThanOrEqual(unnotched);
        }),
        { numRuns: RUNS / 3, seed: 20261127 },
      );
    },
    LIMIT_MS,
  );
});

describe("generated buildings", () => {
  it(
    "take at most one sheet more than the published lower bounds where nothing is notched, and mostly none",
    () => {
      const more = [0, 0];
      fc.assert(
        fc.property(buildingSeed, (seed) => {
          for (const zone of sheetZones(read(buildingDocument(seed)))) {
            const { score, bound } = planColumns(zone);
            expect(bound.least).toBeLessThanOrEqual(score.sheets);
            if (score.notches > 0) continue;
            expect(bound.unnotched).toBeLessThanOrEqual(score.sheets);
            const over = score.sheets - publishedBound(zone);
            expect([0, 1]).toContain(over);
            more[over] = (more[over] ?? 0) + 1;
          }
        }),
        { numRuns: RUNS / 3, seed: 20261130 },
      );
      expect(more[0]).toBeGreaterThan(20 * (more[1] ?? 0));
    },
    LIMIT_MS,
  );
});
