/**
 * Planes fitted to readings against a general linear-programming library (HiGHS), against trying every choice, and against cases worked
 * by hand.
 */
import fc from "fast-check";
import loadHighs from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { joined, type SharedCorner } from "../../src/site/survey/joined.ts";
import { leastCost } from "../../src/site/survey/linear-program.ts";
import {
  type Height,
  leastSquares,
  outerPlane,
  type Plane,
  planeAt,
  planedBack,
  smallestBand,
} from "../../src/site/survey/plane.ts";

type Highs = Awaited<ReturnType<typeof loadHighs>>;

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** What HiGHS makes of it: unknowns are free. */
function byLibrary(cost: readonly number[], rows: readonly { of: readonly number[]; least: number }[]) {
  const sum = (of: readonly number[]): string =>
    of.map((value, i) => `${value < 0 ? "-" : "+"} ${Math.abs(value)} v${i}`).join(" ");
  const program = [
    "Minimize",
    ` obj: ${sum(cost)}`,
    "Subject To",
    ...rows.map(({ of, least }, i) => ` c${i}: ${sum(of)} >= ${least}`),
    "Bounds",
    ...cost.map((_, i) => ` v${i} free`),
    "End",
  ].join("\n");
  return highs.solve(program);
}

/** Readings on a grid of metres, to the millimetre. */
const wall: fc.Arbitrary<Height[]> = fc
  .record({ columns: fc.integer({ min: 2, max: 6 }), rows: fc.integer({ min: 2, max: 4 }) })
  .chain(({ columns, rows }) =>
    fc
      .array(fc.integer({ min: -25, max: 25 }), { minLength: columns * rows, maxLength: columns * rows })
      .map((values) =>
        values.map((outward, i) => ({ x: (i % columns) * 1200, y: Math.floor(i / columns) * 900, outward })),
      ),
  );
const lean = fc.constantFrom(0, 1, 3, 50);

describe("against HiGHS, 200 walls", () => {
  it("the outer plane packs as little", () => {
    fc.assert(
      fc.property(wall, lean, fc.constantFrom(0, 2), (heights, mmPerM, spare) => {
        const ours = outerPlane(heights, { mmPerM, spare });
        const rows = heights.map(({ x, y, outward }) => ({
          of: [1, x / 1000, y / 1000],
          least: outward - spare,
        }));
        const bounds = [1, 2].flatMap((which) =>
          [1, -1].map((sign) => ({ of: [0, 1, 2].map((i) => (i === which ? sign : 0)), least: -mmPerM })),
        );
        const cost = [0, 1, 2].map((i) => rows.reduce((all, { of }) => all + (of[i] as number), 0));
        const theirs = byLibrary(cost, [...rows, ...bounds]);
        expect(theirs.Status).toBe("Optimal");
        const packed = theirs.ObjectiveValue - heights.reduce((all, { outward }) => all + outward, 0);
        expect(ours?.packing).toBeCloseTo(packed + spare * heights.length, 6);
        for (const { x, y, outward } of heights) {
          expect(ours && planeAt(ours.plane, x, y) - outward).toBeGreaterThan(-spare - 1e-6);
        }
        expect(Math.abs(ours?.plane.alongPerM ?? 99)).toBeLessThan(mmPerM + 1e-6);
        expect(Math.abs(ours?.plane.upPerM ?? 99)).toBeLessThan(mmPerM + 1e-6);
      }),
      { numRuns: 200, seed: 3 },
    );
  });

  it("the band is as small", () => {
    fc.assert(
      fc.property(wall, lean, (heights, mmPerM) => {
        const ours = smallestBand(heights, { mmPerM });
        const rows = heights.flatMap(({ x, y, outward }) => [
          { of: [1, x / 1000, y / 1000, 1], least: outward },
          { of: [-1, -x / 1000, -y / 1000, 1], least: -outward },
        ]);
        const bounds = [1, 2].flatMap((which) =>
          [1, -1].map((sign) => ({ of: [0, 1, 2, 3].map((i) => (i === which ? sign : 0)), least: -mmPerM })),
        );
        const theirs = byLibrary([0, 0, 0, 1], [...rows, ...bounds]);
        expect(ours?.half).toBeCloseTo(theirs.ObjectiveValue, 6);
        for (const { x, y, outward } of heights) {
          expect(ours && Math.abs(planeAt(ours.plane, x, y) - outward)).toBeLessThan(
            (ours?.half ?? 0) + 1e-6,
          );
        }
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it("any programme of three unknowns ends alike", () => {
    const row = fc.record({
      of: fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 3, maxLength: 3 }),
      least: fc.integer({ min: -9, max: 9 }),
    });
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 3, maxLength: 3 }),
        fc.array(row, { minLength: 1, maxLength: 12 }),
        (cost, rows) => {
          const ours = leastCost(
            cost,
            rows.map(({ of, least }) => ({ coefficients: of, least })),
          );
          const theirs = byLibrary(cost, rows);
          seen.add(ours.kind);
          if (ours.kind === "best") {
            expect(theirs.Status).toBe("Optimal");
            expect(ours.value).toBeCloseTo(theirs.ObjectiveValue, 6);
            for (const { of, least } of rows) {
              const value = of.reduce((all, one, i) => all + one * (ours.x[i] as number), 0);
              expect(value).toBeGreaterThan(least - 1e-6);
            }
          } else expect(theirs.Status).not.toBe("Optimal");
        },
      ),
      { numRuns: 400, seed: 5 },
    );
    expect([...seen].sort()).toEqual(["best", "impossible", "unbounded"]);
  });
});

/** Every choice of so many out of a list. */
function choices(count: number, of: readonly number[]): number[][] {
  if (count === 0) return [[]];
  return of.flatMap((first, i) => choices(count - 1, of.slice(i + 1)).map((rest) => [first, ...rest]));
}

it("planes back the spots that leave the least packing, of all choices of one and two, each worked by HiGHS", () => {
  fc.assert(
    fc.property(wall, fc.constantFrom(1, 2), (heights, spots) => {
      const few = heights.slice(0, 10);
      if (few.length < spots + 3) return;
      const lean = 3;
      const best = Math.min(
        ...choices(spots, [...few.keys()]).map((gone) => {
          // Each place has a packing of its own, never less than nothing; those that stay stand behind the plane.
          const of = (i: number, sign: number): number[] => [
            ...[1, (few[i] as Height).x / 1000, (few[i] as Height).y / 1000].map((value) => sign * value),
            ...few.map((_, j) => (i === j && sign < 0 ? 1 : 0)),
          ];
          const only = (which: number, sign: number): number[] =>
            Array.from({ length: 3 + few.length }, (_, j) => (j === which ? sign : 0));
          const rows = few.flatMap(({ outward }, i) => [
            ...(gone.includes(i) ? [] : [{ of: of(i, 1), least: outward }]),
            { of: of(i, -1), least: -outward },
            { of: only(3 + i, 1), least: 0 },
          ]);
          const bounds = [1, 2].flatMap((which) =>
            [1, -1].map((sign) => ({ of: only(which, sign), least: -lean })),
          );
          return byLibrary([0, 0, 0, ...few.map(() => 1)], [...rows, ...bounds]).ObjectiveValue;
        }),
      );
      expect(planedBack(few, spots, { mmPerM: lean })?.packing).toBeCloseTo(best, 6);
    }),
    { numRuns: 60, seed: 6 },
  );
});

describe("cases worked by hand", () => {
  const flat = (outward: (x: number, y: number) => number): Height[] =>
    [0, 2000, 4000].flatMap((x) => [0, 1000, 2000].map((y) => ({ x, y, outward: outward(x, y) })));

  it("a plane wall is found by every fit", () => {
    const heights = flat((x, y) => 4 + x / 1000 - (2 * y) / 1000);
    for (const plane of [
      leastSquares(heights),
      smallestBand(heights, { mmPerM: 5 })?.plane,
      outerPlane(heights, { mmPerM: 5 })?.plane,
    ]) {
      expect(plane?.at).toBeCloseTo(4, 6);
      expect(plane?.alongPerM).toBeCloseTo(1, 6);
      expect(plane?.upPerM).toBeCloseTo(-2, 6);
    }
  });

  it("one bump of 9 in a plumb wall: 8 places packed 9 mm, a band of 4.5, a mean of 1", () => {
    const heights = flat((x, y) => (x === 2000 && y === 1000 ? 9 : 0));
    expect(outerPlane(heights, { mmPerM: 0 })?.packing).toBeCloseTo(72, 6);
    expect(smallestBand(heights, { mmPerM: 3 })?.half).toBeCloseTo(4.5, 6);
    expect(leastSquares(heights)).toEqual({ at: 1, alongPerM: 0, upPerM: 0 });
    const planed = planedBack(heights, 1, { mmPerM: 3 });
    expect(planed?.planed).toEqual([4]);
    expect(planed?.packing).toBeCloseTo(0, 6);
  });

  it("a lean that is allowed is followed, and more of it is packed", () => {
    const heights = flat((_, y) => (5 * y) / 1000);
    // At 2 mm a metre the top holds the plane: it stands 10 there, 6 at the base, 8 between; the wall 10, 0, 5.
    const { plane, packing } = outerPlane(heights, { mmPerM: 2 }) ?? {};
    expect(plane && planeAt(plane, 0, 0)).toBeCloseTo(6, 6);
    expect(packing).toBeCloseTo(3 * (6 + 3 + 0), 6);
  });

  it("readings on one line hold no plane", () => {
    expect(leastSquares([0, 1, 2].map((x) => ({ x: x * 1000, y: 0, outward: x })))).toBeUndefined();
  });
});

describe("faces that meet at corners", () => {
  /** Three faces in a row, the ends of each at the corners it shares. */
  const three = fc.tuple(wall, wall, wall);
  const widthOf = (heights: readonly Height[]): number => Math.max(...heights.map(({ x }) => x));
  const cornersOf = (walls: readonly Height[][]): SharedCorner[] => [
    { left: "a", right: "b", x: widthOf(walls[0] ?? []) },
    { left: "b", right: "c", x: widthOf(walls[1] ?? []) },
  ];
  const named = (walls: readonly Height[][]) => new Map(["a", "b", "c"].map((id, i) => [id, walls[i] ?? []]));
  const packed = (heights: readonly Height[], plane: Plane): number =>
    heights.reduce((sum, { x, y, outward }) => sum + planeAt(plane, x, y) - outward, 0);

  it("pack as little in all as HiGHS finds, nowhere less than none, and stand off alike along each corner", () => {
    fc.assert(
      fc.property(three, lean, (walls, mmPerM) => {
        const corners = cornersOf(walls);
        const planes = joined(named(walls), corners, { mmPerM });
        const put = (face: number, values: readonly number[]): number[] =>
          Array.from({ length: 9 }, (_, i) => (Math.floor(i / 3) === face ? (values[i % 3] as number) : 0));
        const stand = walls.flatMap((heights, face) =>
          heights.map(({ x, y, outward }) => ({ of: put(face, [1, x / 1000, y / 1000]), least: outward })),
        );
        const bounds = walls.flatMap((_, face) =>
          [1, 2].flatMap((which) =>
            [1, -1].map((sign) => ({
              of: put(face, [0, which === 1 ? sign : 0, which === 2 ? sign : 0]),
              least: -mmPerM,
            })),
          ),
        );
        // At two heights, and straight lines are one line.
        const alike = corners.flatMap(({ x }, face) =>
          [0, 3].flatMap((y) => {
            const row = put(face, [1, x / 1000, y]).map(
              (value, i) => value - (put(face + 1, [1, 0, y])[i] ?? 0),
            );
            return [row, row.map((value) => -value)].map((of) => ({ of, least: 0 }));
          }),
        );
        const cost = stand.reduce<number[]>(
          (sum, { of }) => sum.map((value, i) => value + (of[i] as number)),
          new Array<number>(9).fill(0),
        );
        const theirs = byLibrary(cost, [...stand, ...bounds, ...alike]);
        expect(theirs.Status).toBe("Optimal");
        const own = walls.map((heights, i) => ({ heights, plane: planes.get("abc"[i] ?? "") as Plane }));
        const sum = own.reduce((all, { heights, plane }) => all + packed(heights, plane), 0);
        const heightsSum = walls.flat().reduce((all, { outward }) => all + outward, 0);
        expect(sum).toBeCloseTo(theirs.ObjectiveValue - heightsSum, 6);
        for (const { heights, plane } of own) {
          for (const { x, y, outward } of heights) {
            expect(planeAt(plane, x, y) - outward).toBeGreaterThan(-1e-6);
          }
          expect(Math.max(Math.abs(plane.alongPerM), Math.abs(plane.upPerM))).toBeLessThan(mmPerM + 1e-6);
        }
        for (const [i, { x }] of corners.entries()) {
          for (const y of [0, 2700]) {
            const [left, right] = [own[i], own[i + 1]];
            expect(planeAt(left?.plane as Plane, x, y)).toBeCloseTo(planeAt(right?.plane as Plane, 0, y), 6);
          }
        }
      }),
      { numRuns: 150, seed: 8 },
    );
  });

  it("by hand: a wall at 0 beside one at 6, both plumb, is packed 6 at each of its six places; leaning 3 mm a metre, half of it", () => {
    const flat = (outward: number): Height[] =>
      [0, 1000, 2000].flatMap((x) => [0, 1000].map((y) => ({ x, y, outward })));
    const walls = new Map([
      ["a", flat(0)],
      ["b", flat(6)],
    ]);
    const corners = [{ left: "a", right: "b", x: 2000 }];
    const plumb = joined(walls, corners, { mmPerM: 0 });
    expect(packed(flat(0), plumb.get("a") as Plane)).toBeCloseTo(36, 6);
    expect(packed(flat(6), plumb.get("b") as Plane)).toBeCloseTo(0, 6);
    // It stands off 6 at the corner, 3 in the middle, nothing at its other end.
    const leaning = joined(walls, corners, { mmPerM: 3 });
    expect(packed(flat(0), leaning.get("a") as Plane)).toBeCloseTo(2 * (6 + 3 + 0), 6);
    expect(packed(flat(6), leaning.get("b") as Plane)).toBeCloseTo(0, 6);
  });

  it("leave a face alone that no other meets", () => {
    const heights: Height[] = [{ x: 0, y: 0, outward: 4 }];
    expect(joined(new Map([["a", heights]]), [], { mmPerM: 2 }).size).toBe(0);
  });
});
