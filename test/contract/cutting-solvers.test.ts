/**
 * What every cutting solver keeps to, whatever its method: its plans pass the verifier with their cost and bound, the
 * same request gives the same plan, a request is not changed, and nothing a user can ask makes it throw.
 */
import { describe, expect, it } from "vitest";
import type {
  LengthDemand,
  LengthRequest,
  LengthSolver,
  LengthStock,
  SheetDemand,
  SheetRequest,
  SheetSolver,
} from "../../src/cutting/index.ts";
import {
  cutLengths,
  cutSheets,
  lengthPlans,
  sheetPlans,
  verifyLengthPlan,
  verifySheetPlan,
} from "../../src/cutting/index.ts";

const sheetSolvers: [string, SheetSolver][] = [
  ["sheets", cutSheets],
  ["sheets, first plan only", (request) => cutSheets({ ...request, budget: 0 })],
  ["sheets, another seed", (request) => cutSheets({ ...request, seed: 77 })],
];

const lengthSolvers: [string, LengthSolver][] = [
  ["lengths", cutLengths],
  ["lengths, first plan only", (request) => cutLengths({ ...request, budget: 0 })],
  ["lengths, another seed", (request) => cutLengths({ ...request, seed: 77 })],
];

/** Piece sizes that vary without any chance in them. */
function facadePieces(count: number, mayTurn: (index: number) => boolean): SheetDemand[] {
  return Array.from({ length: count }, (_, index) => ({
    id: `F${index + 1}`,
    width: 250 + ((index * 137) % 17) * 57.15,
    height: 180 + ((index * 91) % 23) * 98.425,
    mayTurn: mayTurn(index),
  }));
}

const trade = [
  { id: "2440", width: 1220, height: 2440, cost: 145, trim: 5 },
  { id: "3050", width: 1220, height: 3050, cost: 182, trim: 5 },
];

const sheetRequests: [string, SheetRequest][] = [
  ["no demands", { stock: trade, demands: [], kerf: 4 }],
  ["no stock", { stock: [], demands: facadePieces(3, () => true), kerf: 4 }],
  ["a facade's worth", { stock: trade, demands: facadePieces(60, (index) => index % 3 === 0), kerf: 4 }],
  [
    "all turnable, no kerf, no trim",
    { stock: [{ id: "s", width: 1220, height: 2440 }], demands: facadePieces(40, () => true), kerf: 0 },
  ],
  [
    "a directed sheet",
    {
      stock: trade.map((one) => ({ ...one, grain: true })),
      demands: facadePieces(30, () => true),
      kerf: 3.2,
    },
  ],
  ["three turns of the saw", { stock: trade, demands: facadePieces(40, () => true), kerf: 4, stages: 3 }],
  ["two turns of the saw", { stock: trade, demands: facadePieces(20, () => true), kerf: 4, stages: 2 }],
  [
    "too little stock",
    { stock: trade.map((one) => ({ ...one, count: 3 })), demands: facadePieces(50, () => true), kerf: 4 },
  ],
  [
    "offcuts and two kinds",
    {
      stock: [
        ...trade,
        { id: "left", width: 800, height: 1900, cost: 2, count: 2, source: "offcut" },
        { id: "white", width: 1250, height: 2500, kind: "white" },
      ],
      demands: facadePieces(40, () => true).map((one, index) =>
        index % 4 === 0 ? { ...one, kind: "white" } : one,
      ),
      kerf: 4,
    },
  ],
  [
    "pieces that fit no sheet",
    {
      stock: trade,
      demands: [
        { id: "long", width: 300, height: 3041, mayTurn: true },
        { id: "exact", width: 1210, height: 3040, mayTurn: false },
      ],
      kerf: 4,
    },
  ],
  [
    "trim that leaves nothing",
    {
      stock: [{ id: "s", width: 100, height: 100, trim: 60 }],
      demands: [{ id: "a", width: 1, height: 1, mayTurn: false }],
      kerf: 3,
    },
  ],
];

describe.each(sheetSolvers)("%s", (_, solve) => {
  it.each(sheetRequests)("%s: a plan that can be sawn, the same each time", (_name, request) => {
    const before = structuredClone(request);
    const result = solve(request);
    expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    expect(solve(structuredClone(request))).toEqual(result);
    expect(request).toEqual(before);
  });
});

function boardPieces(count: number): LengthDemand[] {
  return Array.from({ length: count }, (_, index) => ({
    id: `B${index + 1}`,
    length: 310 + ((index * 53) % 31) * 61.9125,
    section: index % 5 === 0 ? "board 126" : "board 94",
    ...(index % 7 === 0 ? { lots: ["A", "B"] } : {}),
    ...(index % 3 === 0 ? { minWidth: 94 } : {}),
  }));
}

const pile: LengthStock[] = Array.from({ length: 30 }, (_, index) => {
  const length = 1800 + ((index * 71) % 13) * 95;
  const row = 600 + ((index * 37) % 11) * 50;
  return {
    id: `S${index + 1}`,
    length,
    count: 1,
    section: index % 3 === 0 ? "board 126" : "board 94",
    lot: ["A", "B", "C"][index % 3]!,
    width: index % 3 === 0 ? 126 : 94,
    sound: [
      { from: 0, to: row },
      { from: row + 30, to: length },
    ],
  };
});

const bought: LengthStock[] = [2440, 3050, 3660].flatMap((length) =>
  ["board 94", "board 126"].map((section) => ({
    id: `${section} ${length}`,
    length,
    cost: length * 0.0021,
    section,
    width: 126,
    lot: "B",
    sound: [{ from: 0, to: length }],
  })),
);

const lengthRequests: [string, LengthRequest][] = [
  ["no demands", { stock: bought, demands: [], kerf: 3 }],
  ["no stock", { stock: [], demands: boardPieces(3), kerf: 3 }],
  ["bought lengths", { stock: bought, demands: boardPieces(80), kerf: 3.2, endTrim: 10 }],
  [
    "a pile with nail rows, too small",
    { stock: pile, demands: boardPieces(70), kerf: 3, endTrim: 10, defectMargin: 5 },
  ],
  [
    "a pile first, then bought",
    {
      stock: [...pile.map((one) => ({ ...one, cost: 0 })), ...bought],
      demands: boardPieces(60),
      kerf: 3,
      endTrim: 10,
    },
  ],
  [
    "sound runs nearer than the blade",
    {
      stock: [
        {
          id: "s",
          length: 1000,
          section: "board 94",
          sound: [
            { from: 0, to: 500 },
            { from: 501, to: 1000 },
          ],
        },
      ],
      demands: [
        { id: "a", length: 500, section: "board 94" },
        { id: "b", length: 490, section: "board 94" },
      ],
      kerf: 4,
    },
  ],
  [
    "a bar of nothing sound",
    {
      stock: [{ id: "s", length: 1000, section: "board 94", sound: [] }],
      demands: [{ id: "a", length: 5, section: "board 94" }],
      kerf: 4,
    },
  ],
];

describe.each(lengthSolvers)("%s", (_, solve) => {
  it.each(lengthRequests)("%s: a plan that can be sawn, the same each time", (_name, request) => {
    const before = structuredClone(request);
    const result = solve(request);
    expect(verifyLengthPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    expect(solve(structuredClone(request))).toEqual(result);
    expect(request).toEqual(before);
  });
});

/** All that a search gives on its way, each once, and what it returns. */
function onTheWay<Result>(plans: Generator<Result, Result>): { given: Result[]; last: Result } {
  const given = new Set<Result>();
  for (let next = plans.next(); ; next = plans.next()) {
    if (next.done) return { given: [...given], last: next.value };
    given.add(next.value);
  }
}

/** What is left out, then the cost: neither ever grows. */
function expectEverBetter(
  given: readonly { cost: number; bound: { bound: number }; plan: { unplaced: readonly unknown[] } }[],
): void {
  given.slice(1).forEach((one, before) => {
    const other = given[before]!;
    if (one.plan.unplaced.length !== other.plan.unplaced.length) return;
    expect(one.cost).toBeLessThanOrEqual(other.cost);
    expect(one.bound.bound).toBeGreaterThanOrEqual(other.bound.bound);
  });
}

describe("plans on the way", () => {
  it.each(sheetRequests)(
    "of sheets: %s: each can be sawn, none is worse than before, the last is the plan",
    (_, request) => {
      const { given, last } = onTheWay(sheetPlans(request));
      for (const { plan, ...claim } of given) expect(verifySheetPlan({ request, plan, claim })).toEqual([]);
      expectEverBetter(given);
      expect(last).toEqual(cutSheets(request));
    },
  );

  it.each(lengthRequests)(
    "of lengths: %s: each can be sawn, none is worse than before, the last is the plan",
    (_, request) => {
      const { given, last } = onTheWay(lengthPlans(request));
      for (const { plan, ...claim } of given) expect(verifyLengthPlan({ request, plan, claim })).toEqual([]);
      expectEverBetter(given);
      expect(last).toEqual(cutLengths(request));
    },
  );

  it("may be left after the first, which is whole", () => {
    const [, request] = sheetRequests.find(([name]) => name === "a facade's worth")!;
    const { value } = sheetPlans(request).next();
    expect(value.plan.unplaced).toEqual([]);
    expect(verifySheetPlan({ request, plan: value.plan, claim: value })).toEqual([]);
  });
});
