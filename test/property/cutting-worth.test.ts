/**
 * What pieces on one sheet or bar can be worth, against plain recursions over every whole-number cut and over every number of
 * pieces, written here apart; and the linear programme over patterns, by weak duality: its patterns cover the pieces at no more than its bound.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { barWorth } from "../../src/cutting/bar-worth.ts";
import { Columns } from "../../src/cutting/columns.ts";
import { guillotineWorth } from "../../src/cutting/guillotine-worth.ts";

const RUNS = process.env.OUTERLEAF_SOAK ? 5000 : 150;

const types = fc
  .array(
    fc.record({
      width: fc.integer({ min: 2, max: 12 }),
      height: fc.integer({ min: 2, max: 12 }),
      turnable: fc.boolean(),
      worth: fc.integer({ min: 0, max: 50 }),
      count: fc.integer({ min: 1, max: 9 }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((list) => list.map(({ count, ...one }, at) => ({ ...one, demands: Array(count).fill(at) })));

const panels = fc
  .array(
    fc.record({
      width: fc.integer({ min: 12, max: 20 }),
      height: fc.integer({ min: 12, max: 20 }),
      turnable: fc.boolean(),
      cost: fc.integer({ min: 1, max: 9 }),
    }),
    { minLength: 1, maxLength: 2 },
  )
  .map((list) => list.map((one, stock) => ({ ...one, stock })));

type Type = { width: number; height: number; turnable: boolean; worth: number };

function plainWorth(
  list: readonly Type[],
  panel: { width: number; height: number; turnable: boolean },
): number {
  const known = new Map<string, number>();
  const most = (width: number, height: number): number => {
    const key = `${width} ${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = 0;
    for (const one of list) {
      const straight = one.width <= width && one.height <= height;
      const turned = one.turnable && panel.turnable && one.height <= width && one.width <= height;
      if (straight || turned) best = Math.max(best, one.worth);
    }
    for (let cut = 1; cut < width; cut++)
      best = Math.max(best, most(cut, height) + most(width - cut, height));
    for (let cut = 1; cut < height; cut++)
      best = Math.max(best, most(width, cut) + most(width, height - cut));
    known.set(key, best);
    return best;
  };
  return most(panel.width, panel.height);
}

describe("the worth of pieces on a sheet", () => {
  it("is that of trying every cut, and its pattern is worth it and lies within the sheet", () => {
    fc.assert(
      fc.property(types, panels, (list, sheets) => {
        const worth = list.map((one) => one.worth);
        const found = guillotineWorth(list, sheets)?.best(worth) ?? [];
        expect(found).toHaveLength(sheets.length);
        for (const { stock, worth: value, counts, sheet } of found) {
          expect(value).toBe(plainWorth(list, sheets[stock]!));
          expect([...counts].reduce((sum, [type, count]) => sum + count * worth[type]!, 0)).toBe(value);
          const area = sheet.leftovers.reduce((sum, { width, height }) => sum + width * height, 0);
          const laid = [...counts].reduce(
            (sum, [type, count]) => sum + count * list[type]!.width * list[type]!.height,
            0,
          );
          expect(area + laid).toBe(sheets[stock]!.width * sheets[stock]!.height);
        }
      }),
      { numRuns: RUNS },
    );
  });

  it("gives patterns that cover all pieces by fractions at the cost of the bound", () => {
    fc.assert(
      fc.property(types, panels, (list, sheets) => {
        const demand = list.map(({ demands }) => demands.length);
        const worths = guillotineWorth(list, sheets);
        const columns = new Columns({
          demand,
          stock: sheets.map(({ cost }) => ({ cost, count: Number.POSITIVE_INFINITY })),
          best: (worth) => worths?.best(worth) ?? [],
        });
        while (columns.round(1e9));
        const covered = demand.map(() => 0);
        let cost = 0;
        for (const { pattern, level } of columns.solution()) {
          cost += level * sheets[pattern.stock]!.cost;
          for (const [type, count] of pattern.counts) covered[type]! += level * count;
        }
        covered.forEach((count, type) => {
          expect(count).toBeGreaterThan(demand[type]! - 1e-6);
        });
        expect(cost).toBeLessThan(columns.bound + 1e-3);
        expect(cost).toBeGreaterThan(columns.bound - 1e-9);
      }),
      { numRuns: RUNS },
    );
  });
});

describe("the worth of pieces on a bar", () => {
  const bars = fc
    .array(fc.array(fc.integer({ min: 5, max: 40 }), { minLength: 1, maxLength: 2 }), {
      minLength: 1,
      maxLength: 3,
    })
    .map((list) => list.map((runs, stock) => ({ stock, cost: 1, runs, serves: new Set([stock % 2, 2]) })));
  const pieces = fc.array(
    fc.record({
      length: fc.integer({ min: 3, max: 20 }),
      kind: fc.constantFrom(0, 1, 2),
      worth: fc.integer({ min: 0, max: 30 }),
      count: fc.integer({ min: 0, max: 4 }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  type Piece = { length: number; kind: number; worth: number; count: number };

  const most = ([one, ...others]: readonly Piece[], length: number): number => {
    if (one === undefined) return 0;
    const counts = Array.from({ length: one.count + 1 }, (_, count) => count);
    return Math.max(
      ...counts
        .filter((count) => count * one.length <= length)
        .map((count) => count * one.worth + most(others, length - count * one.length)),
    );
  };

  it("is that of trying every number of each piece in every run, by table and by list, and its pattern is worth it", () => {
    fc.assert(
      fc.property(bars, pieces, fc.constantFrom(1, 1e-6), (list, kinds, unit) => {
        const worth = kinds.map((one) => one.worth);
        const demand = kinds.map(({ count }) => count);
        const found = barWorth(kinds, list, unit).best(worth, demand) ?? [];
        expect(found).toHaveLength(list.length);
        for (const { stock, worth: value, runs, counts } of found) {
          const bar = list[stock]!;
          const served = kinds.filter(({ kind }) => bar.serves.has(kind));
          expect(value).toBe(bar.runs.reduce((sum, run) => sum + most(served, run), 0));
          expect([...counts].reduce((sum, [type, count]) => sum + count * worth[type]!, 0)).toBe(value);
          runs.forEach((run, place) => {
            const length = [...run].reduce((sum, [type, count]) => sum + count * kinds[type]!.length, 0);
            expect(length).toBeLessThanOrEqual(bar.runs[place]!);
          });
        }
      }),
      { numRuns: RUNS },
    );
  });
});
