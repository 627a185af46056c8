/** The numbered cuts of generated plans, made one after another, free every piece; and a replay sees what was spoiled on purpose. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type NumberedCut, numberedCuts } from "../../src/cutting/cut-order.ts";
import type { SheetRequest } from "../../src/cutting/index.ts";
import { cutSheets } from "../../src/cutting/index.ts";
import { beyondReach } from "../../src/cutting/verify/saw-reach.ts";
import { replayCuts, sheetSteps } from "../../src/cutting/verify/saw-steps.ts";

const side = (most: number) => fc.integer({ min: 80, max: 2 * most }).map((halves) => halves / 2);

const request: fc.Arbitrary<SheetRequest> = fc.record({
  kerf: fc.constantFrom(0, 1.6, 4),
  budget: fc.constantFrom(0, 25),
  stock: fc.constantFrom(0, 5).map((trim) => [{ id: "s", width: 1220, height: 2440, trim }]),
  reach: fc.integer({ min: 300, max: 1300 }),
  demands: fc
    .array(fc.record({ width: side(1200), height: side(2400), mayTurn: fc.boolean() }), {
      minLength: 1,
      maxLength: 20,
    })
    .map((list) => list.map((one, index) => ({ id: `p${index}`, ...one }))),
});

interface Sawn {
  readonly replay: (cuts: readonly NumberedCut[]) => string[];
  readonly cuts: readonly NumberedCut[];
}

function sawn(of: SheetRequest): Sawn[] {
  return cutSheets(of).plan.sheets.map((sheet) => {
    const stock = of.stock[0];
    if (!stock) throw new Error("no stock");
    return {
      cuts: numberedCuts(sheet.tree),
      replay: (cuts) =>
        replayCuts({ sheet, stock, cuts, kerf: of.kerf, where: "/sheets/0" }).map(({ code }) => code),
    };
  });
}

function partedSheets(check: (one: Sawn, at: number) => void): void {
  fc.assert(
    fc.property(request, fc.nat(), (of, pick) => {
      for (const one of sawn(of)) if (one.cuts.length > 1) check(one, pick % one.cuts.length);
    }),
  );
}

describe("cuts in their order", () => {
  it("free every piece", () => {
    fc.assert(
      fc.property(request, (of) => {
        for (const { replay, cuts } of sawn(of)) expect(replay(cuts)).toEqual([]);
      }),
    );
  });

  it("are refused where one is left out", () => {
    partedSheets(({ replay, cuts }, at) => {
      const left = cuts
        .filter((_, index) => index !== at)
        .map((cut, index) => ({ ...cut, number: index + 1 }));
      expect(replay(left)).not.toEqual([]);
    });
  });

  it("are refused where the first comes after another", () => {
    partedSheets(({ replay, cuts }) => {
      const [first, second, ...rest] = cuts;
      if (!first || !second) throw new Error("too few cuts");
      expect(replay([{ ...second, number: 1 }, { ...first, number: 2 }, ...rest])).toContain(
        "part-not-in-hand",
      );
    });
  });

  it("are refused where one lies beside its place, stops short or bears another number", () => {
    partedSheets(({ replay, cuts }, at) => {
      const spoilt = (change: (cut: NumberedCut) => NumberedCut) =>
        replay(cuts.map((cut, index) => (index === at ? change(cut) : cut)));
      const upright = (cut: NumberedCut) => cut.from[0] === cut.to[0];
      const shift = ([x, y]: readonly [number, number], cut: NumberedCut) =>
        upright(cut) ? ([x - 0.5, y] as const) : ([x, y - 0.5] as const);
      expect(spoilt((cut) => ({ ...cut, from: shift(cut.from, cut), to: shift(cut.to, cut) }))).not.toEqual(
        [],
      );
      expect(
        spoilt((cut) => ({
          ...cut,
          to: upright(cut) ? [cut.to[0], cut.to[1] - 1] : [cut.to[0] - 1, cut.to[1]],
        })),
      ).toContain("cut-not-through");
      expect(spoilt((cut) => ({ ...cut, number: cut.number + 1 }))).toContain("number-wrong");
    });
  });
});

describe("what a step asks of the saw", () => {
  const cut: NumberedCut = {
    number: 1,
    region: { x: 0, y: 0, width: 1200, height: 2500 },
    from: [0, 800],
    to: [1200, 800],
  };
  const saw = { kerf: 4, kgPerM2: 15 };

  // By hand: 2500 less 800 and a kerf of 4 leaves 1696, so the nearer edge is 800 off; 1.2 by 2.5 m is 3 m2, 45 kg at 15 kg/m2.
  it.each([
    [{ table: { length: 2500, width: 1200 } }, []],
    [{ table: { length: 1200, width: 2500 } }, []],
    [{ table: { length: 2400, width: 1200 } }, [{ limit: "table", cut: 1, asks: 2500, has: 2400 }]],
    [{ table: { length: 3000, width: 1100 } }, [{ limit: "table", cut: 1, asks: 1200, has: 1100 }]],
    [{ fence: 800 }, []],
    [{ fence: 799 }, [{ limit: "fence", cut: 1, asks: 800, has: 799 }]],
    [{ lift: 45 }, []],
    [{ lift: 44 }, [{ limit: "lift", cut: 1, asks: 45, has: 44 }]],
    [{}, []],
  ])("%j", (reach, found) => {
    expect(beyondReach(sheetSteps([cut], saw), reach)).toEqual(found);
  });

  it("is measured from whichever edge is nearer", () => {
    const far: NumberedCut = { ...cut, from: [0, 2000], to: [1200, 2000] };
    expect(beyondReach(sheetSteps([far], saw), { fence: 496 })).toEqual([]);
    expect(beyondReach(sheetSteps([far], saw), { fence: 495 })).toMatchObject([{ asks: 496 }]);
  });

  it("is kept within reach by the order of a row's cuts where it can be", () => {
    // The largest first, 600 comes off while more than that is left. The smallest first, 360 and three of 480 leave 600.
    const demands = [600, 480, 480, 480, 360].map((height, index) => ({
      id: `p${index}`,
      width: 1220,
      height,
      mayTurn: false,
    }));
    const furthest = (reach?: number) => {
      const { plan } = cutSheets({
        stock: [{ id: "s", width: 1220, height: 2440 }],
        demands,
        kerf: 4,
        ...(reach === undefined ? {} : { reach }),
      });
      const cuts = plan.sheets.flatMap(({ tree }) => numberedCuts(tree));
      return Math.max(
        ...cuts.flatMap((one) => beyondReach(sheetSteps([one], saw), { fence: 1 })).map(({ asks }) => asks),
      );
    };
    expect(furthest()).toBe(600);
    expect(furthest(500)).toBe(480);
  });
});
