/** Pins and bands through every re-layout, and facades of every pattern and lay that fill their zones. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { type ColumnPlan, planColumns } from "../../src/setout/sheets/plan.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";
import { faceProject, faceZone, type SmallFace, smallFace } from "../helpers/sheet-faces.ts";

const RUNS = process.env.OUTERLEAF_SOAK ? 2000 : 32;
const LIMIT_MS = process.env.OUTERLEAF_SOAK ? 3_600_000 : 60_000;

type Span = readonly [number, number];

const band = fc
  .tuple(fc.integer({ min: 50, max: 3000 }), fc.integer({ min: 20, max: 900 }))
  .map(([from, width]): [number, number] => [from, from + width]);

const wished: fc.Arbitrary<SmallFace> = fc
  .record({
    face: smallFace(),
    pattern: fc.constantFrom("stacked", "grid", "offset"),
    x: fc.array(fc.integer({ min: -50, max: 3400 }), { maxLength: 2 }),
    y: fc.array(fc.integer({ min: -50, max: 3400 }), { maxLength: 1 }),
    bandsX: fc.array(band, { maxLength: 1 }),
    bandsY: fc.array(band, { maxLength: 1 }),
  })
  .map(({ face, pattern, x, y, bandsX, bandsY }) => ({
    ...face,
    pattern,
    pinned: { x, y },
    forbidden: { x: bandsX, y: bandsY },
  }));

const touches = (a: Span, b: Span): boolean => a[0] < b[1] && b[0] < a[1];

/** Every pin that was not refused has its joint, and no joint but those on heads touches a band. */
function expectKept({ ground, cladding }: SheetZone, plan: ColumnPlan): void {
  const { pinned, forbidden } = ground.zone.joints ?? {};
  const refused = plan.wishes.refused.map(({ axis, at }) => `${axis} ${at}`);
  for (const at of pinned?.x ?? []) {
    const middles = plan.joints.map(({ x }) => (x[0] + x[1]) / 2);
    expect(middles.includes(at)).toBe(!refused.includes(`x ${at}`));
  }
  for (const at of pinned?.y ?? []) {
    if (refused.includes(`y ${at}`)) continue;
    for (const { stack } of plan.columns) {
      // A sheet would lie across the line and its joint; a row may end on the line or begin over the joint.
      expect(stack.rows.filter(([low, high]) => low < at && high > at + cladding.joint)).toEqual([]);
    }
  }
  for (const one of forbidden?.x ?? []) {
    expect(plan.joints.filter(({ x }) => touches(x, one))).toEqual([]);
  }
  for (const one of forbidden?.y ?? []) {
    const cuts = plan.columns.flatMap(({ stack }) => stack.cuts);
    expect(cuts.filter((cut) => touches([cut, cut + cladding.joint], one))).toEqual([]);
  }
}

describe("the user's own lines", () => {
  it(
    "are kept in every pattern and lay, and after openings and stock change",
    () => {
      fc.assert(
        fc.property(wished, fc.integer({ min: 5, max: 300 }), (face, by) => {
          const moved = face.openings.map((one) => ({
            ...one,
            left: one.left + by,
            width: one.width + by / 5,
          }));
          for (const again of [
            face,
            { ...face, openings: moved },
            { ...face, stock: [1000, 2000] as const },
          ]) {
            const zone = faceZone(again);
            expectKept(zone, planColumns(zone));
          }
        }),
        { numRuns: RUNS, seed: 20261201 },
      );
    },
    LIMIT_MS,
  );

  it(
    "leave a facade that is whole, holds, and names what is too large for its stock",
    () => {
      fc.assert(
        fc.property(wished, (face) => {
          const project = faceProject(face);
          expect(facadeProblems(project, design(project).facade)).toEqual([]);
        }),
        { numRuns: RUNS / 4, seed: 20261202 },
      );
    },
    LIMIT_MS,
  );
});

describe("patterns", () => {
  it(
    "let every level joint of a grid run through whatever it meets, and count every crowded pair of an offset bond",
    () => {
      fc.assert(
        fc.property(smallFace(), (face) => {
          const grid = planColumns(faceZone({ ...face, pattern: "grid" }));
          const lines = new Set(grid.columns.flatMap(({ stack }) => stack.cuts));
          for (const { stack } of grid.columns) {
            for (const line of lines) {
              expect(stack.rows.filter(([low, high]) => low < line && high > line + 8)).toEqual([]);
            }
          }
          const zone = faceZone({ ...face, pattern: "offset" });
          const offset = planColumns(zone);
          const sides = zone.stock.flatMap(({ width, height }) => [width, height]);
          const sheet = face.lay === "lying" ? Math.min(...sides) : Math.max(...sides);
          const crowded = offset.columns
            .slice(1)
            .flatMap(({ stack }, i) =>
              stack.cuts.flatMap((cut) =>
                (offset.columns[i]?.stack.cuts ?? []).filter(
                  (other) => Math.abs(cut - other) < sheet / 3 - 1e-6,
                ),
              ),
            );
          expect(offset.score.misaligned).toBeGreaterThanOrEqual(crowded.length);
        }),
        { numRuns: RUNS, seed: 20261203 },
      );
    },
    LIMIT_MS,
  );
});
