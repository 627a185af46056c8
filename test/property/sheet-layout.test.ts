/** The search for sheet joints against plain enumeration, and against its own lower bound. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planColumns } from "../../src/setout/sheets/plan.ts";
import { buildingDocument, buildingSeed, read } from "../helpers/buildings.ts";
import { faceZone, type SmallFace, smallFace } from "../helpers/sheet-faces.ts";
import { sheetZones } from "../helpers/sheet-zones.ts";
import { BruteForce, GridBruteForce } from "./sheet-layout-brute.ts";
import { OffsetBruteForce } from "./sheet-offset-brute.ts";

const SOAK = process.env.OUTERLEAF_SOAK !== undefined;
const RUNS = SOAK ? 3000 : 300;
const LIMIT_MS = SOAK ? 3_600_000 : 60_000;

function expectTheCheapest(face: SmallFace): void {
  const zone = faceZone(face);
  const plan = planColumns(zone);
  const [best, next] = new BruteForce(zone).twoBest();
  expect(plan.score.total).toBeCloseTo(best ?? Number.NaN, 6);
  if (next === undefined) expect(plan.runnerUp).toBeUndefined();
  else expect(plan.runnerUp?.score.total).toBeCloseTo(next, 6);
}

describe("small faces", () => {
  it(
    "are laid out as cheaply as any set of joints and level lines allows, and the runner-up is the next cheapest",
    () => {
      fc.assert(fc.property(smallFace({ widest: 2100 }), expectTheCheapest), {
        numRuns: RUNS,
        seed: 20261125,
      });
    },
    LIMIT_MS,
  );

  it(
    "are so with pinned lines and forbidden bands as well",
    () => {
      const wished = fc.record({
        face: smallFace({ widest: 2000 }),
        pin: fc.option(fc.integer({ min: 100, max: 1200 })),
        level: fc.option(fc.integer({ min: 200, max: 1300 })),
        band: fc.option(fc.tuple(fc.integer({ min: 100, max: 1200 }), fc.integer({ min: 50, max: 700 }))),
      });
      fc.assert(
        fc.property(wished, ({ face, pin, level, band }) => {
          const bands: [number, number][] = band ? [[band[0], band[0] + band[1]]] : [];
          // A pin in a band is refused, which is another test's matter.
          const isFree = pin !== null && !bands.some(([from, to]) => pin + 5 > from && pin - 5 < to);
          expectTheCheapest({
            ...face,
            pinned: { x: isFree ? [pin] : [], y: level === null ? [] : [level] },
            forbidden: { x: bands },
          });
        }),
        { numRuns: RUNS / 3, seed: 20261126 },
      );
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
          expect(bound.unnotched).toBeLessThanOrEqual(brute.fewestSheets(false));
        }),
        { numRuns: RUNS / 3, seed: 20261127 },
      );
    },
    LIMIT_MS,
  );
});

describe("a grid", () => {
  it(
    "is the cheapest over all sets of lines that run through",
    () => {
      fc.assert(
        fc.property(smallFace({ widest: 1900 }), (face) => {
          const zone = faceZone({ ...face, pattern: "grid" });
          expect(planColumns(zone).score.total).toBeCloseTo(new GridBruteForce(zone).best(), 6);
        }),
        { numRuns: RUNS / 10, seed: 20261128 },
      );
    },
    LIMIT_MS,
  );
});

/** Sheets of both lays have so many lines to lie on that not all of their stacks can be tried. */
const offsetFace = smallFace({ widest: 1900 }).filter(({ lay }) => lay !== "either");

describe("the offset pattern", () => {
  it(
    "is the cheapest over all joints and all ways to stack the columns, crowded neighbours counted",
    () => {
      fc.assert(
        fc.property(offsetFace, (face) => {
          const zone = faceZone({ ...face, pattern: "offset" });
          const { total } = planColumns(zone).score;
          expect(new OffsetBruteForce(zone, total).best()).toBeCloseTo(total, 6);
        }),
        { numRuns: RUNS / 6, seed: 20261129 },
      );
    },
    LIMIT_MS,
  );
});

describe("generated buildings", () => {
  it(
    "take at most one sheet more than the lower bound where nothing is notched",
    () => {
      fc.assert(
        fc.property(buildingSeed, (seed) => {
          for (const zone of sheetZones(read(buildingDocument(seed)))) {
            const { score, bound } = planColumns(zone);
            expect(bound.least).toBeLessThanOrEqual(score.sheets);
            if (score.notches === 0) expect(score.sheets - bound.unnotched).toBeLessThanOrEqual(1);
          }
        }),
        { numRuns: RUNS / 3, seed: 20261130 },
      );
    },
    LIMIT_MS,
  );
});
