/** Cutting a hand-made wall: what is asked of which stock, what is said of what cannot be had, and what is refused. */
import { describe, expect, it } from "vitest";
import { type CutSolvers, cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { CutPlan } from "../../src/cutting/facade/plan.ts";
import { cutLengths, cutPile, cutSheets } from "../../src/cutting/index.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Piece } from "../../src/setout/facade.ts";
import { batten, board, pieceOf, pileOf, sheet, wallFacade, wallProject } from "./cut-facade-wall.ts";

function cut(project: Project, pieces: readonly Piece[]) {
  const { plan, findings } = cutFacade(project, wallFacade(pieces));
  if (!plan) throw new Error(`refused: ${JSON.stringify(findings)}`);
  return { plan, notes: findings.filter(({ code }) => code !== "C004"), findings };
}

function stripPieces(plan: CutPlan): string[] {
  const bars = plan.rips?.result.lengths.plan.bars ?? [];
  return bars.flatMap(({ pieces }) => pieces.map(({ demandId }) => demandId)).sort();
}

const floor = { lots: ["A"] };

describe("sheets", () => {
  it("two of nearly a sheet each take two sheets, and that is proven least", () => {
    const { plan, findings } = cut(wallProject(), [sheet("S1", 1200, 2400), sheet("S2", 1200, 2400)]);
    expect(plan.sheets[0]?.result.plan.sheets.length).toBe(2);
    expect(plan).toMatchObject({ cost: 200, bound: 200, gap: 0, proven: true, unplaced: [] });
    expect(findings.map(({ code, outcome, says }) => [code, outcome, says.key])).toEqual([
      ["C004", "pass", "schedule.cut.proven"],
    ]);
  });

  it("without a direction may be turned", () => {
    const { plan } = cut(wallProject(), [sheet("S1", 2400, 1200)]);
    expect(plan.sheets[0]?.result.plan.sheets[0]?.placements[0]).toMatchObject({ turned: true });
  });

  it("keep their direction where they have one", () => {
    // 2400 across the grain does not go on 1220; with the grain it goes on 2440, whichever way the piece then hangs.
    const across = cut(wallProject(), [sheet("S1", 2400, 1200, { grain: "y" })]);
    expect(across.plan.unplaced).toEqual([{ mark: "S1", reason: "too-large" }]);
    expect(across.notes[0]).toMatchObject({ code: "C002", outcome: "fail", where: { marks: ["S1"] } });
    for (const grain of ["x", "y"] as const) {
      const along = cut(wallProject(), [sheet("S1", 1200, 2400, { grain })]);
      expect(along.plan.sheets[0]?.result.plan.sheets[0]?.placements[0]).toMatchObject({ turned: false });
    }
  });

  it("lose the trim of the saw at every edge", () => {
    const project = wallProject({
      stock: { saw: { kerf: 3, sheetTrim: 11, boardEndTrim: 0, boardEdgeTrim: 0 } },
    });
    // 1220 less twice 11 is 1198.
    expect(cut(project, [sheet("S1", 1198, 2400)]).plan.unplaced).toEqual([]);
    expect(cut(project, [sheet("S1", 1199, 2400)]).plan.unplaced.length).toBe(1);
  });

  it("of which there are only so many are not used twice over by two materials", () => {
    const project = wallProject({
      stock: { sheets: [{ id: "s2440", width: 1220, height: 2440, price: 100, count: 3 }] },
    });
    const [boards, sheets] = project.claddings;
    if (sheets?.kind !== "sheets" || !boards) throw new Error("no sheets");
    const white = { ...sheets, id: "white-sheets", material: "fibre cement, white" };
    const facade = wallFacade(["S1", "S2"].map((mark) => sheet(mark, 1200, 2400)));
    const [front] = facade.faces;
    if (!front) throw new Error("no face");
    const side = {
      ...front,
      id: "side",
      zones: front.zones.map((zone) => (zone.id === "sheets" ? { ...zone, cladding: "white-sheets" } : zone)),
      pieces: ["T1", "T2"].map((mark) => sheet(mark, 1200, 2400, { face: "side" })),
    };
    const { plan } = cutFacade(
      { ...project, claddings: [boards, sheets, white] },
      { ...facade, faces: [front, side] },
    );
    expect(plan?.sheets.map(({ claddings, result }) => [claddings[0], result.plan.sheets.length])).toEqual([
      ["grey-sheets", 2],
      ["white-sheets", 1],
    ]);
    expect(plan?.unplaced.map(({ reason }) => reason)).toEqual(["stock-used-up"]);
  });

  it("without a price are counted by area, apart from money", () => {
    const project = wallProject({ stock: { sheets: [{ id: "s2440", width: 1220, height: 2440 }] } });
    const { plan } = cut(project, [sheet("S1", 1200, 2400), batten("L1", 2400)]);
    expect(plan.sheets[0]).toMatchObject({ costIn: "m2", result: { cost: 1.22 * 2.44 } });
    // One batten of 2.44 m at 2 a metre.
    expect(plan.cost).toBeCloseTo(4.88, 9);
  });
});

describe("battens and backing", () => {
  it("four of 1200 come from two of 2440: 1200 + 3 + 1200", () => {
    const { plan } = cut(
      wallProject(),
      ["L1", "L2", "L3", "L4"].map((mark) => batten(mark, 1200)),
    );
    expect(plan.lengths[0]?.result.plan.bars.length).toBe(2);
    expect(plan.cost).toBeCloseTo(2 * 2.44 * 2, 9);
  });

  it("a narrow batten takes the full width of its section", () => {
    const narrow = { cut: { length: 1000, width: 41, thickness: 25 } };
    const { plan } = cut(wallProject(), [batten("L1", 1000), batten("L2", 1000, narrow)]);
    expect(plan.lengths[0]?.result.plan.bars.length).toBe(1);
  });

  it("a batten wider than its section is named", () => {
    const wide = { cut: { length: 1000, width: 65, thickness: 25 } };
    const { notes } = cut(wallProject(), [batten("L1", 1000, wide)]);
    expect(notes[0]).toMatchObject({ code: "C002", outcome: "fail" });
    expect(notes[0]?.says.values.why).toEqual({ key: "schedule.cut.reason.no-match", values: {} });
  });

  it("backing is cut from the narrowest batten that is as thick and wide enough", () => {
    const battens = [
      { id: "b38x140", thickness: 38, width: 140, lengths: [2440] },
      { id: "b38x89", thickness: 38, width: 89, lengths: [2440] },
      { id: "b38x64", thickness: 38, width: 64, lengths: [2440] },
      { id: "b51x89", thickness: 51, width: 89, lengths: [2440] },
    ];
    const block = pieceOf("K1", "backing", { length: 572, width: 89, thickness: 38 });
    expect(cut(wallProject({ stock: { battens } }), [block]).plan.lengths[0]?.stock).toBe("b38x89");
  });

  it("backing of a section that nobody stocks is to be bought, not a failure", () => {
    const { plan, notes } = cut(wallProject(), [
      pieceOf("K1", "backing", { length: 572, width: 89, thickness: 38 }),
    ]);
    expect(plan.unplaced).toEqual([{ mark: "K1", reason: "no-stock" }]);
    expect(notes.map(({ code, outcome }) => [code, outcome])).toEqual([["C002", "attention"]]);
  });
});

describe("boards", () => {
  const nailRow = { defects: [{ kind: "nail row", from: 1000, to: 1030 }] };
  const pieces = [board("B1", 900), board("B2", 900), board("B3", 1500)];

  it("come from the pile round its nail rows; what is longer than a sound run is to be found", () => {
    // 100 wide less 3 an edge is 94; sound runs 10 to 1000 and 1030 to 1990.
    const { plan, notes } = cut(wallProject({ boards: floor, pile: pileOf([nailRow]) }), pieces);
    expect(stripPieces(plan)).toEqual(["B1", "B2"]);
    expect(plan.boards.toFind).toMatchObject([{ width: 94, pieces: [{ mark: "B3", length: 1500 }] }]);
    expect(plan.unplaced).toEqual([]);
    expect(notes).toMatchObject([
      {
        code: "C001",
        outcome: "attention",
        demand: 3.3,
        limit: 1.8,
        unit: "m",
        where: { marks: ["B3"] },
        hint: { key: "schedule.cut.pile-short.find" },
      },
    ]);
    expect(notes[0]?.says.values.lots).toEqual([
      { key: "schedule.cut.lot-gives", values: { lot: "A", metres: 1.8 } },
    ]);
  });

  it.each([
    ["too narrow once straightened", { width: 99.9 }],
    ["too thin", { thickness: 19 }],
    ["of a lot that is not named", { lot: "B" }],
    ["with too much wane", { width: 110, wane: { edge: "left" as const, width: 11 } }],
  ])("do not come from a board %s", (_what, fields) => {
    const { plan } = cut(wallProject({ boards: floor, pile: pileOf([fields]) }), [board("B1", 900)]);
    expect(plan.rips?.ripped).toEqual([]);
    expect(plan.boards.toFind[0]?.pieces.length).toBe(1);
  });

  it("that are not needed stay whole", () => {
    const { plan, notes } = cut(wallProject({ boards: floor, pile: pileOf([{}, {}, {}]) }), [
      board("B1", 900),
    ]);
    expect(plan.rips?.ripped.length).toBe(1);
    expect(notes).toEqual([]);
  });

  it("that the pile lacks are bought where the stock has them", () => {
    const bought = { species: "northern-white-cedar", thickness: 20, lengths: [3050], pricePerM: 3 };
    const stock = {
      boards: [
        { ...bought, id: "wide", width: 120 },
        { ...bought, id: "fitting", width: 94 },
        { ...bought, id: "narrow", width: 90 },
        { ...bought, id: "other", width: 94, species: "white-spruce" },
      ],
    };
    const { plan, notes } = cut(wallProject({ stock, boards: floor, pile: pileOf([nailRow]) }), pieces);
    expect(plan.boards.toFind).toEqual([]);
    expect(plan.boards.bought).toMatchObject([{ use: "boards", stock: "fitting" }]);
    expect(plan.cost).toBeCloseTo(3.05 * 3, 9);
    expect(notes).toMatchObject([{ code: "C001", hint: { key: "schedule.cut.pile-short.bought" } }]);
  });

  it("without a pile and without boards in stock fail", () => {
    const { plan, notes } = cut(wallProject(), [board("B1", 900)]);
    expect(plan.rips).toBeUndefined();
    expect(plan.boards.toFind[0]?.pieces).toEqual([{ mark: "B1", length: 900 }]);
    expect(notes).toMatchObject([{ code: "C002", outcome: "fail", where: { marks: ["B1"] } }]);
  });

  it("of a cladding that names no lot come from lots of its wood", () => {
    const { lots: _lots, ...boards } = wallProject().claddings[0] as { lots?: string[] };
    const project = wallProject({ pile: pileOf([{}]) });
    const claddings = project.claddings.map((one) => (one.kind === "boards" ? (boards as typeof one) : one));
    expect(stripPieces(cut({ ...project, claddings }, [board("B1", 900)]).plan)).toEqual(["B1"]);
  });
});

describe("a plan that a verifier refuses", () => {
  const solvers: CutSolvers = { sheets: cutSheets, lengths: cutLengths, pile: cutPile };
  const project = wallProject({ boards: floor, pile: pileOf([{ length: 2100 }]) });
  const pieces = [
    sheet("S1", 600, 2400),
    sheet("S2", 600, 2400),
    batten("L1", 1000),
    board("B1", 900),
    board("B2", 900),
  ];

  it.each<[string, Partial<CutSolvers>]>([
    [
      "sheets",
      // Cuts as if the blade took nothing.
      { sheets: (request) => cutSheets({ ...request, kerf: 0 }) },
    ],
    [
      "lengths",
      {
        lengths: (request) => {
          const result = cutLengths(request);
          return { ...result, plan: { ...result.plan, bars: [] } };
        },
      },
    ],
    [
      "rips",
      // Forgets to straighten, and says that nobody asked for it.
      { pile: (request) => cutPile({ ...request, straighten: 0 }) },
    ],
    ["rips", { pile: (request) => cutPile({ ...request, endTrim: 0 }) }],
  ])("%s: no plan, and an error of ours is said", (part, wrong) => {
    const { plan, findings } = cutFacade(project, wallFacade(pieces), { ...solvers, ...wrong });
    expect(plan).toBeUndefined();
    expect(findings).toMatchObject([
      {
        code: "C003",
        outcome: "cannot evaluate",
        says: { values: { part: { key: `schedule.cut.part-of.${part}` } } },
      },
    ]);
  });

  it("is none of ours", () => {
    expect(cutFacade(project, wallFacade(pieces)).plan).toBeDefined();
  });
});

describe("nothing to cut", () => {
  it("is an empty plan", () => {
    const { plan, findings } = cut(wallProject(), []);
    expect(plan).toMatchObject({ sheets: [], lengths: [], cost: 0, bound: 0, gap: 0, proof: "none" });
    expect(findings).toEqual([]);
  });
});
