import { describe, expect, it } from "vitest";
import { saw } from "../../src/cutting/index.ts";

const sheets = {
  id: "job",
  sheets: [[1220, 3050, 182]],
  items: [
    [1220, 2172, 1],
    [1220, 870, 1],
  ],
  kerf: 4,
};
const bars = {
  id: "bars",
  stock: [
    [2440, 5],
    [3050, 6, 2],
  ],
  items: [[1200, 3]],
  kerf: 4,
  trim: 5,
};

describe("saw", () => {
  it("answers a list of sheets with placements, tree, cost, bound and how it is proven", () => {
    const { answers, problems } = saw(sheets, { turn: false });
    expect(problems).toEqual([]);
    expect(answers).toMatchObject([
      {
        id: "job",
        kind: "2d",
        cost: 182,
        bound: 182,
        gap: 0,
        proof: "total",
        proven: true,
        seed: 1,
        unplaced: [],
        problems: [],
        sheets: [
          {
            sheet: 0,
            placements: [
              { item: 0, x: 0, y: 0, width: 1220, height: 2172, turned: false },
              { item: 1, x: 0, y: 2176, width: 1220, height: 870, turned: false },
            ],
            tree: { cut: { along: "x", at: 2172 } },
          },
        ],
      },
    ]);
  });

  it("answers a list of bars", () => {
    const { answers, problems } = saw(bars, { turn: false });
    expect(problems).toEqual([]);
    expect(answers[0]).toMatchObject({ id: "bars", kind: "1d", cost: 10, unplaced: [], problems: [] });
  });

  it("answers the instances of a collection in order, leaving out those with problems", () => {
    const collection = {
      schema: "cutting-bench-1",
      kind: "2d",
      instances: [sheets, { id: "bad" }, { ...sheets, id: "again" }],
    };
    const { answers, problems } = saw(collection, { turn: true });
    expect(answers.map((answer) => answer.id)).toEqual(["job", "again"]);
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([
      ["not-a-list", "/instances/1/sheets"],
      ["not-a-list", "/instances/1/items"],
    ]);
  });

  it("turns pieces, limits turns of the saw and counts what is left out, as the options say", () => {
    const lying = { sheets: [[1220, 2440]], items: [[2000, 1000, 2]] };
    expect(saw(lying, { turn: false }).answers[0]?.unplaced).toEqual([
      { item: 0, count: 2, reason: "too-large" },
    ]);
    expect(saw(lying, { turn: true }).answers[0]).toMatchObject({ cost: 2, unplaced: [] });
    expect(saw(lying, { turn: true, stages: 1 }).answers[0]?.unplaced).toHaveLength(1);
    expect(saw(sheets, { turn: false, budget: 0 }).answers[0]?.iterations).toBeGreaterThan(0);
  });

  it.each([
    ["no object", 3, "not-an-object", ""],
    ["instances not a list", { instances: {} }, "not-a-list", "/instances"],
    ["another objective", { ...sheets, objective: "max-profit-one-sheet" }, "unsupported", "/objective"],
    ["defects on sheets", { ...sheets, defects: [[0, 1, 1, 2, 2]] }, "unsupported", "/defects"],
    ["rules of another game", { ...sheets, params: { max1cut: 50 } }, "unsupported", "/params"],
    ["a worth with no objective", { ...sheets, items: [[10, 10, 1, 99]] }, "unsupported", "/items/0/3"],
    [
      "an order of taking out",
      { ...sheets, objective: "min-sheets", items: [[10, 10, 1, null, 2]] },
      "unsupported",
      "/items/0/4",
    ],
    ["a word for a number", { ...sheets, items: [["wide", 10, 1]] }, "not-a-number", "/items/0/0"],
    ["a negative kerf", { ...sheets, kerf: -1 }, "out-of-range", "/kerf"],
    ["a piece of no width", { ...sheets, items: [[0, 10, 1]] }, "out-of-range", "/items/0/0"],
    ["half a piece", { ...sheets, items: [[10, 10, 0.5]] }, "out-of-range", "/items/0/2"],
    ["a million pieces", { ...sheets, items: [[10, 10, 1000000]] }, "out-of-range", "/items/0/2"],
    ["a row that is no list", { ...bars, stock: [2440] }, "not-a-list", "/stock/0"],
  ])("refuses %s", (_, document, code, where) => {
    const { answers, problems } = saw(document, { turn: false });
    expect(answers).toEqual([]);
    expect(problems).toContainEqual(expect.objectContaining({ code, where }));
  });
});
