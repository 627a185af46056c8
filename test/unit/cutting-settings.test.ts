/** How often the saw is set; the sums are done by hand from the definition in `docs/decisions/0013`. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { numberedCuts } from "../../src/cutting/cut-order.ts";
import {
  type CutResult,
  cutLengths,
  cutSheets,
  type LengthRequest,
  type SheetPlan,
  type SheetRequest,
  sheetPlans,
} from "../../src/cutting/index.ts";
import { barSettings, countOf, inOrder, sheetSettings } from "../../src/cutting/settings.ts";
import { checkSettings, setBar, setSheet } from "../../src/cutting/verify/settings.ts";

const piece = (id: string, width: number, height: number) => ({ id, width, height, mayTurn: false });

const settingsOf = (request: SheetRequest) => cutSheets(request).plan.sheets.map(sheetSettings);

/** Every plan that a search gives, the last made to set the saw less often. */
function plansOf(request: SheetRequest): CutResult<SheetPlan>[] {
  const plans: CutResult<SheetPlan>[] = [];
  const run = sheetPlans(request);
  for (let next = run.next(); ; next = run.next()) {
    plans.push(next.value);
    if (next.done) return plans;
  }
}

function largest(result: CutResult<SheetPlan> | undefined): number {
  const offcuts = result?.plan.sheets.flatMap((sheet) => sheet.offcuts) ?? [];
  return Math.max(0, ...offcuts.map(({ width, height }) => width * height));
}

describe("settings of the saw", () => {
  it("strips first, then across: two strips of three pieces take two settings, not four", () => {
    const demands = Array.from({ length: 6 }, (_, i) => piece(`p${i}`, 600, 700));
    const stock = [{ id: "s", width: 1200, height: 2100, cost: 1 }];
    const [only] = settingsOf({ stock, demands, kerf: 0 });
    // One cut parts the sheet, two cuts each strip; or two cuts the sheet, one each strip.
    expect(only?.list).toHaveLength(5);
    expect(countOf(only ? [only] : [])).toBe(2);
  });

  it("sheets cut alike are cut together, and what begins as the saw is set comes next", () => {
    const alike = { name: "a", list: [600, 400] };
    const other = { name: "b", list: [300, 600] };
    const third = { name: "c", list: [400, 300] };
    expect(countOf([alike, alike, other])).toBe(4);
    expect(countOf([alike, other, alike])).toBe(5);
    expect(inOrder([alike, other, alike, third], (one) => one)).toEqual([alike, alike, third, other]);
    expect(countOf([alike, alike, third, other])).toBe(4);
  });

  it("sheets of the same pieces are all cut in one way", () => {
    const demands = Array.from({ length: 24 }, (_, i) =>
      i % 3 === 0 ? piece(`p${i}`, 800, 1500) : piece(`p${i}`, 390, 1500),
    );
    const stock = [{ id: "s", width: 1600, height: 1500, cost: 1 }];
    const { plan } = cutSheets({ stock, demands, kerf: 4, budget: 400 });
    expect(plan.sheets).toHaveLength(8);
    const sets = plan.sheets.map(sheetSettings);
    expect(new Set(sets.map(({ name }) => name)).size).toBe(1);
    expect(countOf(sets)).toBe(2);
  });

  it("a bar begins with the length that the stop is set to", () => {
    const lengths = [1500, 900, 900, 500, 1500, 500];
    const request: LengthRequest = {
      stock: [{ id: "b", length: 2400, section: "x", sound: [{ from: 0, to: 2400 }] }],
      demands: lengths.map((length, i) => ({ id: `p${i}`, length, section: "x" })),
      kerf: 0,
    };
    const bars = cutLengths(request).plan.bars.map(barSettings);
    const changes = bars.flatMap(({ list }) => list);
    expect([...changes].sort()).toEqual([...lengths].map((one) => one * 8000).sort());
    // Three bars of 2400: {1500, 900} twice or {1500, 500} and {900, 900, 500}; sawn in any order they take no more.
    expect(countOf(bars)).toBeLessThanOrEqual(4);
  });

  it("fewer settings never cost stock or the largest offcut: as the search left them, whatever is asked", () => {
    const side = (most: number) => fc.integer({ min: 80, max: most });
    fc.assert(
      fc.property(
        fc.array(fc.record({ width: side(1200), height: side(2400) }), { minLength: 1, maxLength: 24 }),
        fc.constantFrom(0, 4),
        (sizes, kerf) => {
          const request: SheetRequest = {
            stock: [{ id: "s", width: 1220, height: 2440 }],
            demands: sizes.map(({ width, height }, i) => ({
              id: `p${i}`,
              width,
              height,
              mayTurn: i % 2 === 0,
            })),
            kerf,
            budget: 0,
          };
          const plans = plansOf(request);
          const [before, after] = [plans.at(-2), plans.at(-1)];
          expect(after?.cost).toBe(before?.cost);
          expect(largest(after)).toBeGreaterThanOrEqual(largest(before));
        },
      ),
    );
  });
});

describe("the verifier of settings", () => {
  const request: SheetRequest = {
    stock: [{ id: "s", width: 1220, height: 2440 }],
    demands: [600, 600, 500, 400, 300, 600].map((width, i) => piece(`p${i}`, width, 1100 + 20 * i)),
    kerf: 4,
  };
  const { sheets } = cutSheets(request).plan;
  const units = sheets.map(({ stockId, tree }) => setSheet(stockId, numberedCuts(tree)));
  const count = countOf(sheets.map(sheetSettings));

  it("counts as the plan does, and refuses one more or one less", () => {
    expect(checkSettings(units, count, "/settings")).toEqual([]);
    for (const stated of [count - 1, count + 1]) {
      expect(checkSettings(units, stated, "/settings")).toEqual([
        { code: "settings-wrong", where: "/settings", parameters: { stated, found: count } },
      ]);
    }
  });

  it("takes cuts by their numbers, and bars by their lengths", () => {
    const cuts = numberedCuts(sheets[0]?.tree ?? { x: 0, y: 0, width: 0, height: 0 });
    expect(setSheet("s", [...cuts].reverse())).toEqual(setSheet("s", cuts));
    const bar = (lengths: readonly number[], index = 0) => {
      let at = 0;
      return {
        stockId: "b",
        index,
        rests: [],
        pieces: lengths.map((length, i) => {
          at += length + 3;
          return { demandId: `${index} ${i}`, from: at - length - 3, to: at - 3 };
        }),
      };
    };
    const bars = [bar([900, 900, 500]), bar([900, 900, 500], 1), bar([500, 700], 2)];
    expect(checkSettings(bars.map(setBar), 3, "")).toEqual([]);
    expect(countOf(bars.map(barSettings))).toBe(3);
    expect(
      checkSettings(
        [bars[0], bars[2], bars[1]].flatMap((one) => (one ? [setBar(one)] : [])),
        5,
        "",
      ),
    ).toEqual([]);
  });
});
