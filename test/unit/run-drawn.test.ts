/** A run of walls drawn by hand: corners fall where the hand means them, and the words told of them give the same corners back. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import { readRun } from "../../src/project/editing/run.ts";
import { cornerMoved, tellRun, withCorner } from "../../src/project/editing/run-drawn.ts";

const STEPS = { lengthMm: 50, turnDeg: 15 };
const MM = { units: "mm", language: "en" } as const;

/** The corners that a hand draws which goes to these places in turn. */
function drawn(...places: Point[]): Point[] {
  let points: Point[] = [[0, 0]];
  for (const at of places) points = withCorner(points, at, STEPS) ?? points;
  return points;
}

describe("a corner that the hand sets", () => {
  it("runs level first, then in whole steps of length and turn", () => {
    expect(drawn([8390, 260], [8470, 3610], [6020, 3580])).toEqual([
      [0, 0],
      [8400, 0],
      [8400, 3600],
      [6000, 3600],
    ]);
  });

  it("turns to the right as well, and on the slant", () => {
    const points = drawn([5000, 0], [5030, -2980], [7100, -5120]);
    expect(tellRun(points, MM)).toBe("5000, right, 3000, left 45°, 3000");
  });

  it("is the first one near it, and then the run closes", () => {
    const points = drawn([6000, 0], [6000, 4000], [10, 4000], [30, 20]);
    expect(points.at(-1)).toEqual([0, 0]);
    const told = tellRun(points, MM);
    expect(told).toBe("6000, left, 4000, left, 6000, left, 4000, left");
    const read = readRun(told, "mm");
    expect(read.ok && read.run.closed).toBe(true);
  });

  it("straight on makes the last wall longer", () => {
    expect(drawn([3000, 0], [5000, 20], [5000, 1000])).toEqual([
      [0, 0],
      [5000, 0],
      [5000, 1000],
    ]);
  });

  it("is none where the hand has gone no step, or back", () => {
    expect(withCorner([[0, 0]], [20, 0], STEPS)).toBeUndefined();
    expect(withCorner([[0, 0]], [-500, 0], STEPS)).toBeUndefined();
    expect(withCorner([], [500, 0], STEPS)).toBeUndefined();
  });
});

describe("a corner that is moved", () => {
  const square = drawn([6000, 0], [6000, 4000], [0, 4000], [0, 0]);
  it("takes the ends of its two walls along", () => {
    expect(tellRun(cornerMoved(square, { corner: 2, at: [7510, 4020] }, STEPS), MM)).toBe(
      "6000, left 69.444°, 4272, left 110.556°, 7500, left, 4000, left",
    );
  });

  it("keeps a closed run closed, and the first wall level", () => {
    const moved = cornerMoved(square, { corner: 0, at: [-1010, 330] }, STEPS);
    expect(moved[0]).toEqual([-1000, 0]);
    expect(moved.at(-1)).toEqual([-1000, 0]);
  });
});

it("is told in feet and inches and in French", () => {
  const points: Point[] = [
    [0, 0],
    [3048, 0],
    [3048, 1524],
  ];
  expect(tellRun(points, { units: "feet-inch", language: "fr" })).toBe(`10'-0", gauche, 5'-0"`);
});

it("gives back from its words the corners that were drawn, to a millimetre", () => {
  const place = fc.tuple(fc.integer({ min: -9000, max: 12_000 }), fc.integer({ min: -9000, max: 9000 }));
  const seen = { read: 0, refused: 0 };
  fc.assert(
    fc.property(
      fc.array(place, { minLength: 1, maxLength: 7 }),
      fc.constantFrom(...(["mm", "feet-inch"] as const)),
      (places, units) => {
        const points = drawn(...places);
        if (points.length < 2) return;
        const read = readRun(tellRun(points, { units, language: "en" }), units === "mm" ? "mm" : "in");
        if (!read.ok) {
          // Walls that cross themselves are refused in words, as when they are typed, and so is a closing wall in line with the first.
          expect(read.says.key).toMatch(/^project\.run\.(crosses|inward|no-turn)$/);
          if (read.says.key.endsWith("no-turn")) expect(points.at(-1)).toEqual(points[0]);
          seen.refused += 1;
          return;
        }
        seen.read += 1;
        expect(read.run.points).toHaveLength(points.length);
        for (const [i, [x, y]] of read.run.points.entries()) {
          expect(Math.abs(x - (points[i] as Point)[0])).toBeLessThan(1);
          expect(Math.abs(y - (points[i] as Point)[1])).toBeLessThan(1);
        }
      },
    ),
    { numRuns: 400, seed: 11 },
  );
  expect(seen.read).toBeGreaterThan(100);
  expect(seen.refused).toBeGreaterThan(20);
});
