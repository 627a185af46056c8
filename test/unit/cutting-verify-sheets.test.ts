/** The verifier must refuse each way of breaking a good plan, by its own code. */
import { describe, expect, it } from "vitest";
import type { CutNode, CutSheet, SheetPlan, SheetRequest } from "../../src/cutting/index.ts";
import { cutSheets, verifySheetPlan } from "../../src/cutting/index.ts";

type Loose<T> = T extends readonly (infer One)[]
  ? Loose<One>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Loose<T[Key]> }
    : T;

const request: SheetRequest = {
  stock: [
    { id: "new", width: 1220, height: 2440, cost: 145, trim: 5 },
    { id: "offcut", width: 700, height: 800, cost: 1, count: 1, grain: true, source: "offcut" },
  ],
  demands: [
    { id: "A1", width: 1100, height: 1400, mayTurn: false },
    { id: "A2", width: 600, height: 700, mayTurn: false },
    { id: "A3", width: 500, height: 600, mayTurn: true },
    { id: "A4", width: 500, height: 300, mayTurn: false },
    { id: "A5", width: 1210, height: 2430, mayTurn: false },
    { id: "A6", width: 650, height: 750, mayTurn: false },
  ],
  kerf: 4,
};
const result = cutSheets(request);

function broken(change: (plan: Loose<SheetPlan>) => void, against: SheetRequest = request): string[] {
  const plan = structuredClone(result.plan) as Loose<SheetPlan>;
  change(plan);
  return verifySheetPlan({ request: against, plan: plan as SheetPlan }).map((problem) => problem.code);
}

function find(plan: Loose<SheetPlan>, id: string) {
  for (const sheet of plan.sheets) {
    const placement = sheet.placements.find((one) => one.demandId === id);
    if (placement !== undefined) return { sheet, placement };
  }
  throw new Error(`no ${id} in the plan`);
}

function leaf(tree: Loose<CutNode>, id: string): Loose<CutNode> | undefined {
  if (tree.piece === id) return tree;
  return tree.children?.map((child) => leaf(child, id)).find((found) => found !== undefined);
}

function firstCut(tree: Loose<CutNode>): Loose<CutNode> {
  if (tree.cut !== undefined) return tree;
  throw new Error("the tree has no cut");
}

/** A sheet with four pieces round a middle one, which no straight cut parts. */
function pinwheel(): { request: SheetRequest; plan: SheetPlan } {
  const boxes = [
    { x: 0, y: 0, width: 60, height: 30 },
    { x: 64, y: 0, width: 36, height: 60 },
    { x: 40, y: 64, width: 60, height: 36 },
    { x: 0, y: 34, width: 36, height: 66 },
  ];
  const sheet: CutSheet = {
    stockId: "s",
    index: 0,
    tree: { x: 0, y: 0, width: 100, height: 100 },
    placements: boxes.map((box, index) => ({ demandId: `p${index}`, ...box, turned: false })),
    offcuts: [],
  };
  return {
    request: {
      stock: [{ id: "s", width: 100, height: 100 }],
      demands: boxes.map(({ width, height }, index) => ({ id: `p${index}`, width, height, mayTurn: false })),
      kerf: 4,
    },
    plan: { sheets: [sheet], unplaced: [] },
  };
}

describe("sheet plan verifier", () => {
  it("finds nothing wrong with the plan to start from, which uses both kinds of stock", () => {
    expect(verifySheetPlan({ request, plan: result.plan, claim: result })).toEqual([]);
    expect(new Set(result.plan.sheets.map((sheet) => sheet.stockId))).toEqual(new Set(["new", "offcut"]));
  });

  const breaks: [string, string, (plan: Loose<SheetPlan>) => void][] = [
    [
      "a piece dropped",
      "piece-missing",
      (plan) =>
        find(plan, "A4").sheet.placements.splice(
          find(plan, "A4").sheet.placements.indexOf(find(plan, "A4").placement),
          1,
        ),
    ],
    [
      "a piece doubled",
      "piece-twice",
      (plan) => find(plan, "A5").sheet.placements.push({ ...find(plan, "A4").placement }),
    ],
    [
      "a piece both placed and left out",
      "piece-twice",
      (plan) => plan.unplaced.push({ demandId: "A1", reason: "too-large" }),
    ],
    [
      "a piece nobody asked for",
      "unknown-demand",
      (plan) => {
        find(plan, "A4").placement.demandId = "A9";
      },
    ],
    [
      "a piece a millimetre small",
      "size-wrong",
      (plan) => {
        find(plan, "A1").placement.width -= 1;
      },
    ],
    [
      "a piece turned that may not be",
      "turn-not-allowed",
      (plan) => {
        turn(find(plan, "A4").placement);
      },
    ],
    [
      "a piece over the trimmed edge",
      "outside-stock",
      (plan) => {
        find(plan, "A5").placement.x -= 1;
      },
    ],
    [
      "a piece laid on another",
      "overlap",
      (plan) => {
        overlay(plan, 0);
      },
    ],
    [
      "a neighbour nearer than the blade is wide",
      "kerf-missing",
      (plan) => {
        overlay(plan, 3.9);
      },
    ],
    [
      "a piece that the cuts do not free where it lies",
      "tree-piece",
      (plan) => {
        find(plan, "A1").placement.x += 0.5;
      },
    ],
    [
      "a piece leaf moved",
      "tree-children",
      (plan) => {
        const at = find(plan, "A1");
        const node = leaf(at.sheet.tree, "A1");
        if (node !== undefined) node.x += 0.5;
      },
    ],
    [
      "a tree that is not the sheet less its trim",
      "tree-root",
      (plan) => {
        find(plan, "A5").sheet.tree.width += 10;
      },
    ],
    [
      "a cut outside its region",
      "tree-cut",
      (plan) => {
        const { cut } = firstCut(find(plan, "A1").sheet.tree);
        if (cut !== undefined) cut.at = -3;
      },
    ],
    [
      "a cut moved",
      "tree-children",
      (plan) => {
        const { cut } = firstCut(find(plan, "A1").sheet.tree);
        if (cut !== undefined) cut.at += 2;
      },
    ],
    [
      "a piece and an offcut in one",
      "tree-leaf",
      (plan) => {
        const node = leaf(find(plan, "A1").sheet.tree, "A1");
        if (node !== undefined) node.offcut = true;
      },
    ],
    [
      "an offcut that is not in the tree",
      "tree-offcut",
      (plan) => {
        plan.sheets[0]?.offcuts.push({ x: 5, y: 5, width: 10, height: 10 });
      },
    ],
    [
      "an offcut where a piece lies",
      "offcut-wrong",
      (plan) => {
        find(plan, "A5").sheet.offcuts.push({ x: 100, y: 100, width: 300, height: 300 });
      },
    ],
    [
      "one offcut sheet used twice over",
      "over-count",
      (plan) => {
        const sheet = plan.sheets.find((one) => one.stockId === "offcut");
        if (sheet !== undefined) plan.sheets.push({ ...sheet, index: 1, placements: [], offcuts: [] });
      },
    ],
    [
      "two sheets under one number",
      "index-repeated",
      (plan) => {
        for (const sheet of plan.sheets) sheet.index = 0;
      },
    ],
    [
      "a sheet of no stock",
      "unknown-stock",
      (plan) => {
        find(plan, "A5").sheet.stockId = "other";
      },
    ],
    [
      "a piece left out for a reason that is not so",
      "reason-wrong",
      (plan) => {
        const at = find(plan, "A5");
        at.sheet.placements.length = 0;
        plan.unplaced.push({ demandId: "A5", reason: "too-large" });
      },
    ],
  ];
  it.each(breaks)("refuses %s: %s", (_, code, change) => {
    expect(broken(change)).toContain(code);
  });

  it("refuses a pinwheel, which no saw can cut: not-guillotine", () => {
    const codes = verifySheetPlan(pinwheel()).map((problem) => problem.code);
    expect(codes).toContain("not-guillotine");
    expect(codes).not.toContain("overlap");
    expect(codes).not.toContain("kerf-missing");
  });

  it("refuses a turn on a sheet with a direction, even of a piece that may turn: turn-not-allowed", () => {
    const stock = request.stock.map((one) => ({ ...one, grain: true }));
    const lieTurned = (plan: Loose<SheetPlan>) => {
      const { placement } = find(plan, "A3");
      if (!placement.turned) turn(placement);
    };
    expect(broken(lieTurned, { ...request, stock })).toContain("turn-not-allowed");
  });

  it("refuses a piece from stock of another kind: wrong-kind", () => {
    const demands = request.demands.map((one) => ({ ...one, kind: "white" }));
    expect(broken(() => undefined, { ...request, demands })).toContain("wrong-kind");
  });

  it("refuses more turns of the saw than allowed: too-many-stages", () => {
    expect(broken(() => undefined, { ...request, stages: 1 })).toContain("too-many-stages");
  });

  it("refuses an outline larger than its piece: outline-outside", () => {
    const demands = request.demands.map((one) => ({
      ...one,
      outline: [
        [0, 0],
        [5000, 0],
        [0, 10],
      ] as const,
    }));
    expect(broken(() => undefined, { ...request, demands })).toContain("outline-outside");
  });

  it("refuses a wrong cost, a bound above the cost, and a proof that the bound does not bear out", () => {
    const codes = (claim: { cost: number; bound: { bound: number; proven: boolean } }) =>
      verifySheetPlan({ request, plan: result.plan, claim }).map((problem) => problem.code);
    const { cost } = result;
    expect(codes({ cost: cost - 1, bound: { bound: 0, proven: false } })).toEqual(["cost-wrong"]);
    expect(codes({ cost, bound: { bound: cost + 1, proven: false } })).toEqual(["bound-above-cost"]);
    expect(codes({ cost, bound: { bound: cost - 1, proven: true } })).toEqual(["proven-wrong"]);
  });
});

function turn(placement: Loose<CutSheet["placements"][number]>): void {
  placement.turned = !placement.turned;
  [placement.width, placement.height] = [placement.height, placement.width];
}

/** Moves A1 next to whatever shares its sheet, the given distance away along x; overlapping it where that is 0. */
function overlay(plan: Loose<SheetPlan>, distance: number): void {
  const { sheet, placement } = find(plan, "A1");
  const other = sheet.placements.find((one) => one !== placement);
  if (other === undefined) throw new Error("A1 shares its sheet with no piece");
  placement.y = other.y;
  placement.x = distance === 0 ? other.x : other.x + other.width + distance;
}
