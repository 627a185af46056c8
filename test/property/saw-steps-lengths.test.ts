/** Bars cut to length and boards ripped step by step: generated plans free every piece and strip, and a replay sees what was spoiled on purpose. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CutBar, PileBoard, RippedBoard } from "../../src/cutting/index.ts";
import { cutLengths, cutPile } from "../../src/cutting/index.ts";
import { crosscutSteps, replayCrosscuts } from "../../src/cutting/verify/crosscuts.ts";
import { replayRips, ripSteps } from "../../src/cutting/verify/rip-steps.ts";
import { beyondReach } from "../../src/cutting/verify/saw-reach.ts";

const KERF = 3;
const TRIM = 8;
const LENGTH = 3050;

const lengths = fc
  .array(
    fc.integer({ min: 300, max: 6000 }).map((halves) => halves / 2),
    { minLength: 2, maxLength: 14 },
  )
  .map((list) =>
    cutLengths({
      kerf: KERF,
      endTrim: TRIM,
      budget: 5,
      stock: [{ id: "b", length: LENGTH, section: "", sound: [{ from: 0, to: LENGTH }] }],
      demands: list.map((length, at) => ({ id: `p${at}`, length, section: "" })),
    }).plan.bars.map((bar): CutBar => bar),
  );

function crosscut(bar: CutBar): string[] {
  return replayCrosscuts({
    bar,
    stock: { length: LENGTH },
    kerf: KERF,
    endTrim: TRIM,
    where: "",
  }).problems.map(({ code }) => code);
}

function everyBar(check: (bar: CutBar, at: number) => void): void {
  fc.assert(
    fc.property(lengths, fc.nat(), (bars, pick) => {
      for (const bar of bars) check(bar, pick % bar.pieces.length);
    }),
  );
}

function shifted({ pieces, ...bar }: CutBar, at: number, by: number): CutBar {
  return {
    ...bar,
    pieces: pieces.map((one, index) =>
      index === at ? { ...one, from: one.from + by, to: one.to + by } : one,
    ),
  };
}

describe("crosscuts in their order", () => {
  it("free every piece with both ends sawn", () => {
    everyBar((bar) => expect(crosscut(bar)).toEqual([]));
  });

  it("are refused where a piece lies under the blade of the one before it, or beyond the bar", () => {
    everyBar((bar, at) => {
      if (at > 0) expect(crosscut(shifted(bar, at, -0.5))).toContain("part-not-in-hand");
      const far = bar.pieces.length - 1;
      expect(crosscut(shifted(bar, far, LENGTH))).toContain("part-not-in-hand");
    });
  });

  it("are refused where an end that must be trimmed is left as it came", () => {
    everyBar((bar) => {
      const [first] = bar.pieces;
      expect(crosscut(shifted(bar, 0, -(first?.from ?? 0)))).toContain("end-not-sawn");
      const last = bar.pieces.at(-1);
      expect(crosscut(shifted(bar, bar.pieces.length - 1, LENGTH - (last?.to ?? 0)))).toContain(
        "end-not-sawn",
      );
    });
  });

  // By hand: 2000 × 100 × 25 mm of wood at 1000 kg/m3 weighs 5 kg; 10 off, 900 and a blade of 3 leave 1087 for the last cut.
  it("say what lies on the saw each time", () => {
    const bar = {
      stockId: "b",
      index: 0,
      rests: [],
      pieces: [
        { demandId: "p", from: 10, to: 910 },
        { demandId: "q", from: 913, to: 1913 },
      ],
    };
    const { cuts, problems } = replayCrosscuts({
      bar,
      stock: { length: 2000 },
      kerf: 3,
      endTrim: 10,
      where: "",
    });
    expect(problems).toEqual([]);
    const steps = crosscutSteps(cuts, { width: 100, thickness: 25, kgPerM3: 1000 });
    expect(steps.map(({ part, off }) => [part.width, off])).toEqual([
      [2000, undefined],
      [1990, undefined],
      [1087, undefined],
    ]);
    expect(steps[0]?.kg).toBeCloseTo(5, 9);
    expect(beyondReach(steps, { table: { length: 1995, width: 600 }, lift: 4.99 })).toMatchObject([
      { limit: "table", cut: 1, asks: 2000, has: 1995 },
      { limit: "lift", cut: 1, has: 4.99 },
    ]);
  });
});

const STRAIGHTEN = 4;
const piles = fc
  .array(
    fc.record({
      width: fc.integer({ min: 150, max: 260 }),
      wane: fc.option(
        fc.record({ edge: fc.constantFrom("left", "right"), width: fc.integer({ min: 2, max: 15 }) }),
      ),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((list) => {
    const boards = list.map(
      ({ width, wane }, at): PileBoard => ({
        id: `b${at}`,
        lot: "A",
        length: 2000,
        width,
        thickness: 25,
        ...(wane && { wane }),
        defects: [],
      }),
    );
    const pieces = [60, 90].map((width) => ({
      section: String(width),
      width,
      pieces: Array.from({ length: 3 }, (_, at) => ({ id: `${width} ${at}`, length: 1500 })),
    }));
    const { rips } = cutPile({ boards, wanted: pieces, kerf: KERF, straighten: STRAIGHTEN, budget: 5 });
    return rips.boards.flatMap((ripped) => {
      const board = boards.find(({ id }) => id === ripped.boardId);
      return board ? [{ board, ripped }] : [];
    });
  });

interface OnBoard {
  readonly board: PileBoard;
  readonly ripped: RippedBoard;
}

function rip({ board, ripped }: OnBoard, kerf = KERF): string[] {
  return replayRips({ board, ripped, kerf, straighten: STRAIGHTEN, where: "" }).problems.map(
    ({ code }) => code,
  );
}

function everyBoard(check: (one: OnBoard) => void): void {
  fc.assert(
    fc.property(piles, (list) => list.forEach(check)),
    { numRuns: 40 },
  );
}

function across({ board, ripped }: OnBoard, at: number, by: number): OnBoard {
  const strips = ripped.strips.map((one, index) =>
    index === at ? { ...one, across: { from: one.across.from + by, to: one.across.to + by } } : one,
  );
  return { board, ripped: { ...ripped, strips } };
}

describe("rips in their order", () => {
  it("free every strip, both edges sawn", () => {
    everyBoard((one) => expect(rip(one)).toEqual([]));
  });

  it("are refused with a wider blade than was reckoned with, where there is more than one strip", () => {
    everyBoard((one) => {
      if (one.ripped.strips.length > 1) expect(rip(one, KERF + 0.5)).toContain("part-not-in-hand");
    });
  });

  it("are refused where a strip keeps the raw edge or wane", () => {
    everyBoard((one) => {
      const first = one.ripped.strips[0]?.across.from ?? 0;
      expect(rip(across(one, 0, -first))).toContain("edge-not-sawn");
      if (one.board.wane?.edge === "left") expect(rip(across(one, 0, -first + 1))).toContain("wane-kept");
      const last = one.ripped.strips.length - 1;
      const off = one.board.width - (one.ripped.strips[last]?.across.to ?? 0);
      expect(rip(across(one, last, off))).toContain("edge-not-sawn");
      if (one.board.wane?.edge === "right") expect(rip(across(one, last, off - 1))).toContain("wane-kept");
      expect(rip(across(one, last, off + 1))).toContain("part-not-in-hand");
    });
  });

  // By hand: 200 wide, 4 off the left edge, strips of 90 and 60: the fence stands at 90, then at 60, with 196 and 103 on the saw.
  it("run along the fence from the second cut on, at the strip's own width", () => {
    const board = { width: 200 };
    const strip = (id: string, from: number, to: number) => ({ id, section: "", across: { from, to } });
    const ripped = { boardId: "b", strips: [strip("1", 4, 94), strip("2", 97, 157)] };
    const { cuts, problems } = replayRips({ board, ripped, kerf: 3, straighten: 4, where: "" });
    expect(problems).toEqual([]);
    const steps = ripSteps(cuts, { length: 2000, thickness: 25, kgPerM3: 1000 });
    expect(steps.map(({ part, off }) => [part.height, off])).toEqual([
      [200, undefined],
      [196, 90],
      [103, 60],
    ]);
    expect(steps[0]?.kg).toBeCloseTo(10, 9);
    expect(beyondReach(steps, { fence: 80 })).toEqual([{ limit: "fence", cut: 2, asks: 90, has: 80 }]);
  });
});
