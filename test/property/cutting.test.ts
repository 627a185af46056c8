import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LengthRequest, PileRequest, SheetRequest } from "../../src/cutting/index.ts";
import {
  cutLengths,
  cutPile,
  cutSheets,
  verifyLengthPlan,
  verifyRipPlan,
  verifySheetPlan,
} from "../../src/cutting/index.ts";
import { resumedLengths, resumedSheets } from "../../src/cutting/resume.ts";

/** Lengths as users have them: whole and half millimetres, and sixteenths of an inch. */
function length(least: number, most: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc.integer({ min: least, max: most }),
    fc.integer({ min: 2 * least, max: 2 * most }).map((halves) => halves / 2),
    fc
      .integer({ min: Math.ceil(least / 1.5875), max: Math.floor(most / 1.5875) })
      .map((parts) => parts * 1.5875),
  );
}

const kerf = fc.constantFrom(0, 1.6, 3.175, 4);

const sheetRequest: fc.Arbitrary<SheetRequest> = fc.record({
  kerf,
  budget: fc.constantFrom(0, 25),
  seed: fc.integer({ min: 1, max: 1000 }),
  stages: fc.constantFrom(2, 3, 99),
  stock: fc
    .array(
      fc.record({
        width: length(600, 1300),
        height: length(600, 3100),
        cost: fc.integer({ min: 1, max: 200 }),
        count: fc.integer({ min: 0, max: 30 }),
        trim: fc.constantFrom(0, 5),
        grain: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((list) => list.map((one, index) => ({ id: `s${index}`, ...one }))),
  demands: fc
    .array(fc.record({ width: length(40, 1300), height: length(40, 2500), mayTurn: fc.boolean() }), {
      maxLength: 25,
    })
    .map((list) => list.map((one, index) => ({ id: `p${index}`, ...one }))),
});

const lengthRequest: fc.Arbitrary<LengthRequest> = fc.record({
  kerf,
  budget: fc.constantFrom(0, 25),
  seed: fc.integer({ min: 1, max: 1000 }),
  endTrim: fc.constantFrom(0, 10),
  defectMargin: fc.constantFrom(0, 5),
  stock: fc
    .array(
      fc.record({
        length: length(900, 3700),
        cost: fc.integer({ min: 0, max: 9 }),
        count: fc.integer({ min: 0, max: 4 }),
        lot: fc.constantFrom("A", "B"),
        marks: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 3 }),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((list) =>
      list.map(({ marks, ...one }, index) => {
        const rows = [...marks].sort((a, b) => a - b).map((mark) => Math.round(mark * one.length));
        const starts = [0, ...rows.map((row) => row + 20)];
        const ends = [...rows, one.length];
        const sound = starts
          .map((from, run) => ({ from, to: ends[run] ?? from }))
          .filter((run) => run.to > run.from);
        return { id: `b${index}`, section: "board", ...one, sound };
      }),
    ),
  demands: fc
    .array(
      fc.record(
        { length: length(60, 2400), lots: fc.constantFrom(["A"], ["A", "B"]) },
        { requiredKeys: ["length"] },
      ),
      { maxLength: 25 },
    )
    .map((list) => list.map((one, index) => ({ id: `p${index}`, section: "board", ...one }))),
});

const pileRequest: fc.Arbitrary<PileRequest> = fc.record({
  kerf,
  endTrim: fc.constantFrom(0, 10),
  defectMargin: fc.constantFrom(0, 5),
  budget: fc.constantFrom(0, 40),
  seed: fc.integer({ min: 1, max: 1000 }),
  straighten: fc.constantFrom(0, 2.5),
  boards: fc
    .array(
      fc.record(
        {
          lot: fc.constantFrom("A", "B", "C"),
          length: length(500, 3700),
          width: length(60, 250),
          thickness: fc.constantFrom(19, 24, 32),
          wane: fc.record({ edge: fc.constantFrom("left" as const, "right" as const), width: length(1, 15) }),
          defects: fc.array(
            fc
              .record({ from: length(0, 3700), size: length(1, 200) })
              .map(({ from, size }) => ({ from, to: from + size })),
            { maxLength: 4 },
          ),
        },
        { requiredKeys: ["lot", "length", "width", "thickness", "defects"] },
      ),
      { maxLength: 12 },
    )
    .map((list) => list.map((one, index) => ({ id: `w${index}`, ...one }))),
  wanted: fc
    .uniqueArray(
      fc.record(
        {
          width: fc.integer({ min: 45, max: 160 }),
          lengths: fc.array(length(100, 2500), { maxLength: 8 }),
          lots: fc.constantFrom(["A"], ["B", "C"]),
          minThickness: fc.constantFrom(20, 30),
        },
        { requiredKeys: ["width", "lengths"] },
      ),
      { selector: (one) => one.width, maxLength: 3 },
    )
    .map((list) =>
      list.map(({ lengths, ...one }) => ({
        section: `board ${one.width}`,
        ...one,
        pieces: lengths.map((length, at) => ({ id: `${one.width} ${at}`, length })),
      })),
    ),
});

describe("cutting, on random jobs", () => {
  it("sheet plans can be sawn, cost what they say and no less than their bound", () => {
    fc.assert(
      fc.property(sheetRequest, (request) => {
        const result = cutSheets(request);
        expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
      }),
      { numRuns: 120 },
    );
  });

  it("sheets with defects are cut round them, and cuts of the first turn keep near where they must", () => {
    const withDefects = fc
      .tuple(
        sheetRequest,
        fc.array(fc.tuple(...[0, 0, 0, 0].map(() => fc.double({ min: 0, max: 1, noNaN: true }))), {
          maxLength: 4,
        }),
        fc.constantFrom(undefined, 300, 700),
      )
      .map(([{ stages: _, ...request }, marks, furthestFirstCuts]): SheetRequest => {
        if (furthestFirstCuts !== undefined) return { ...request, furthestFirstCuts };
        const stock = request.stock.map((one) => ({
          ...one,
          count: Math.min(1, one.count ?? 1),
          defects: marks.map(([x = 0, y = 0, width = 0, height = 0]) => {
            const [left, low] = [Math.floor(x * (one.width - 1)), Math.floor(y * (one.height - 1))];
            return {
              x: left,
              y: low,
              width: Math.min(one.width - left, 1 + Math.floor(width * 300)),
              height: Math.min(one.height - low, 1 + Math.floor(height * 300)),
            };
          }),
        }));
        return { ...request, stock };
      });
    fc.assert(
      fc.property(withDefects, (request) => {
        const result = cutSheets(request);
        expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it("length plans can be sawn, cost what they say and no less than their bound", () => {
    fc.assert(
      fc.property(lengthRequest, (request) => {
        const result = cutLengths(request);
        expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it("plans resumed for somewhat other demands can be sawn, and are no worse than plans from nothing", () => {
    fc.assert(
      fc.property(sheetRequest, lengthRequest, fc.nat(5), (sheets, lengths, dropped) => {
        const asked = { ...sheets, demands: sheets.demands.slice(dropped) };
        const sheet = resumedSheets(cutSheets, cutSheets(sheets).plan)(asked);
        expect(verifySheetPlan({ request: asked, plan: sheet.plan, claim: sheet })).toEqual([]);
        const bars = { ...lengths, demands: lengths.demands.slice(dropped) };
        const length = resumedLengths(cutLengths, cutLengths(lengths).plan)(bars);
        expect(verifyLengthPlan({ request: bars, plan: length.plan, claim: length })).toEqual([]);
        const fresh = cutSheets(asked);
        if (fresh.plan.unplaced.length === sheet.plan.unplaced.length) {
          expect(sheet.cost).toBeLessThanOrEqual(fresh.cost + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("rip plans can be sawn, the strips handed on are theirs, and pieces are cut from those", () => {
    fc.assert(
      fc.property(pileRequest, (request) => {
        const found = cutPile(request);
        const { ripRequest, rips, strips, demands, lengths } = found;
        expect(verifyRipPlan({ request: ripRequest, plan: rips, strips })).toEqual([]);
        const { kerf, endTrim = 0, defectMargin = 0 } = request;
        const asked = { stock: strips, demands, kerf, endTrim, defectMargin };
        expect(verifyLengthPlan({ request: asked, plan: lengths.plan, claim: lengths })).toEqual([]);
        expect(cutPile(request)).toEqual(found);
      }),
      { numRuns: 200 },
    );
  });

  it("a job cut out of one sheet is bounded by that one sheet", () => {
    const cuts = fc.array(
      fc.record({ part: fc.nat(1000), across: fc.boolean(), share: fc.integer({ min: 2, max: 8 }) }),
      {
        maxLength: 14,
      },
    );
    fc.assert(
      fc.property(cuts, kerf, (list, blade) => {
        // Saw a sheet at random, and ask for the pieces: one sheet is enough, so the bound may not ask for two.
        const pieces = [{ width: 1220, height: 2440 }];
        for (const cut of list) {
          const index = cut.part % pieces.length;
          const piece = pieces[index]!;
          const side = cut.across ? "width" : "height";
          const first = Math.round((piece[side] * cut.share) / 10);
          const second = piece[side] - first - blade;
          if (first < 20 || second < 20) continue;
          pieces.splice(index, 1, { ...piece, [side]: first }, { ...piece, [side]: second });
        }
        const demands = pieces.map((piece, index) => ({
          id: `p${index}`,
          ...piece,
          mayTurn: list.length % 2 === 0,
        }));
        const result = cutSheets({
          stock: [{ id: "s", width: 1220, height: 2440, cost: 1 }],
          demands,
          kerf: blade,
          budget: 0,
        });
        expect(result.bound.bound).toBe(1);
      }),
      { numRuns: 120 },
    );
  });
});
