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

const counted = { ...sheets, sheets: [[1220, 3050, 182, 2]] };

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

  it("cuts round defects, paying for the sheet whole, and tells which sheet it is", () => {
    // By hand: a band 4 high across the middle leaves two of 1000 × 498 beside a blade of 4, and no third.
    const list = {
      sheets: [[1000, 1000, 10, 2]],
      items: [[1000, 498, 3]],
      kerf: 4,
      defects: [[1, 0, 498, 1000, 4]],
    };
    const [answer] = saw(list, { turn: false }).answers;
    expect(answer).toMatchObject({ cost: 20, unplaced: [], problems: [] });
    const one = saw(
      { ...list, items: [[1000, 499, 1]], sheets: [[1000, 1000, 10, 1]], defects: [[0, 0, 498, 1000, 4]] },
      { turn: true },
    );
    expect(one.answers[0]?.unplaced).toEqual([{ item: 0, count: 1, reason: "too-large" }]);
    const apart = saw(
      {
        ...list,
        defects: [[1, 0, 0, 1000, 600]],
        items: [
          [1000, 1000, 1],
          [1000, 390, 1],
        ],
      },
      { turn: false },
    );
    expect(apart.answers[0]).toMatchObject({ sheets: [{ sheet: 0, number: 1 }, { sheet: 0 }], problems: [] });
  });

  it("keeps cuts of the first turn near each other, whichever way they run", () => {
    // By hand: of 100 × 40, a piece 60 × 30 needs a first cut at 60 along or at 30 across; 25 allows neither.
    const list = { sheets: [[100, 40]], items: [[60, 30, 1]] };
    const left = (max1cut: number) =>
      saw({ ...list, params: { max1cut } }, { turn: false }).answers[0]?.unplaced.length;
    expect([60, 30, 29].map(left)).toEqual([0, 0, 1]);
    // Five of 20 × 40 side by side: all first cuts, 20 apart.
    const row = saw({ sheets: [[100, 40]], items: [[20, 40, 5]], params: { max1cut: 20 } }, { turn: false });
    expect(row.answers[0]).toMatchObject({ cost: 1, problems: [] });
  });

  it("takes the turns of the saw from the list, and from the options before that", () => {
    const list = { sheets: [[100, 100]], items: [[60, 30, 1]], params: { stages: 1 } };
    expect(saw(list, { turn: false }).answers[0]?.unplaced).toHaveLength(1);
    expect(saw(list, { turn: false, stages: 2 }).answers[0]?.unplaced).toEqual([]);
  });

  it("names the board that a stretch lies on, and where", () => {
    const list = {
      stock: [
        [900, 1, 1, 0, 0],
        [1000, 1, 1, 0, 950],
      ],
      items: [[980, 1]],
      boards: [[2000, [[905, 945]]]],
    };
    const { answers, problems } = saw(list, { turn: false });
    expect(problems).toEqual([]);
    expect(answers[0]).toMatchObject({ bars: [{ stock: 1, board: { board: 0, from: 950 } }] });
  });

  it("refuses turns asked of all lists where one has sheets with defects", () => {
    const list = { ...sheets, defects: [[0, 1, 1, 2, 2]] };
    expect(saw(list, { turn: false, stages: 2 }).problems).toEqual([
      { code: "not-together", where: "/defects", value: 2 },
    ]);
    expect(saw(list, { turn: false }).problems).toEqual([]);
  });

  it.each([
    ["no object", 3, "not-an-object", ""],
    ["instances not a list", { instances: {} }, "not-a-list", "/instances"],
    ["another objective", { ...sheets, objective: "max-profit-one-sheet" }, "unsupported", "/objective"],
    ["a defect off its sheet", { ...sheets, defects: [[0, 1219, 1, 2, 2]] }, "out-of-range", "/defects/0"],
    ["a defect of no sheet", { ...counted, defects: [[2, 1, 1, 2, 2]] }, "out-of-range", "/defects/0"],
    ["rules of another game", { ...sheets, params: { min1cut: 50 } }, "unsupported", "/params/min1cut"],
    ["rules that are none", { ...sheets, params: 3 }, "not-an-object", "/params"],
    [
      "limits of cuts on sheets with defects",
      { ...sheets, defects: [[0, 1, 1, 2, 2]], params: { stages: 3 } },
      "not-together",
      "/params",
    ],
    ["a word that it does not know", { ...sheets, blade: 4 }, "unsupported", "/blade"],
    ["sheets of another schema", { ...sheets, schema: "cutting-bench-2" }, "unsupported", "/schema"],
    ["sheet rules for bars", { ...bars, params: { stages: 2 } }, "unsupported", "/params"],
    ["a column too many", { ...bars, items: [[1200, 3, 7]] }, "unsupported", "/items/0/2"],
    ["a stretch of no board", { ...bars, stock: [[900, 1, 1, 0, 0]] }, "out-of-range", "/stock/0/3"],
    [
      "a stretch over a defect",
      { ...bars, stock: [[900, 1, 1, 0, 50]], boards: [[2000, [[940, 960]]]] },
      "not-sound",
      "/stock/0",
    ],
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
