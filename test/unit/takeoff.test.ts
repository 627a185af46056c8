/** Taking off a hand-made wall: quantities worked out on paper beside what the take-off says. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade, Piece } from "../../src/setout/facade.ts";
import { coatsIn } from "../../src/takeoff/finish.ts";
import type { OrderLine, Takeoff } from "../../src/takeoff/model.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { batten, board, pieceOf, pileOf, screws, sheet, wallFacade, wallProject } from "./cut-facade-wall.ts";

function taken(project: Project, pieces: readonly Piece[], more: Partial<Facade> = {}): Takeoff {
  const facade = { ...wallFacade(pieces), ...more };
  return takeOff(project, facade, cutFacade(project, facade).plan);
}

function ordered({ order }: Takeoff, key: string): OrderLine[] {
  return order.lines.filter(({ item }) => item.key === `schedule.order.${key}`);
}

describe("schedules", () => {
  it("name the lot that the cut plan takes a board from, and its finish", () => {
    const project = wallProject({ boards: { lots: ["A"], finish: "oiled" }, pile: pileOf([{}]) });
    const { pieces } = taken(project, [board("B1", 900), sheet("S1", 600, 600)]);
    expect(pieces).toMatchObject([
      { mark: "B1", kind: "board", length: 900, width: 94, thickness: 20, lot: "A", finish: "oiled" },
      { mark: "S1", kind: "sheet", length: 600, width: 600, thickness: 8 },
    ]);
    expect(pieces[1]).not.toHaveProperty("finish");
  });

  it("tell of each batten what is screwed and packed behind it, and whether it is ripped", () => {
    const packer = (mark: string, thickness: number): Piece =>
      pieceOf(mark, "packer", { length: 60, width: 64, thickness }, { supports: ["L1"] });
    const { battens, packers } = taken(wallProject(), [
      batten("L1", 1000, { fixings: screws("batten-100", 3) }),
      batten("L2", 500, { cut: { length: 500, width: 41, thickness: 25 } }),
      packer("P1", 2),
      packer("P2", 2),
      packer("P3", 5),
    ]);
    expect(battens).toMatchObject([
      {
        mark: "L1",
        ripped: false,
        screws: [{ screw: "batten-100", count: 3 }],
        packers: [
          { thickness: 2, count: 2 },
          { thickness: 5, count: 1 },
        ],
      },
      { mark: "L2", ripped: true, screws: [], packers: [] },
    ]);
    expect(packers).toEqual([
      { thickness: 2, count: 2 },
      { thickness: 5, count: 1 },
    ]);
  });
});

describe("areas", () => {
  it("are gross, and net of openings, by zone", () => {
    // Zones of 1 × 2 m and 2 × 2 m; a window of 1 × 1 m in the second.
    const { areas } = taken(wallProject(), [sheet("S1", 1000, 1500)]);
    expect(areas).toMatchObject([
      { zone: "boards", gross: 2, net: 2, pieces: 0, openSharePercent: 0 },
      { zone: "sheets", gross: 4, net: 3, pieces: 1.5, openSharePercent: 0 },
    ]);
  });

  it("share out what joints leave open, but not the strips beside openings", () => {
    const facade = wallFacade([sheet("S1", 950, 1000)]);
    const [front] = facade.faces;
    if (!front) throw new Error("no face");
    const joint = (kind: "sheet joint" | "edge", width: number) => ({
      kind,
      face: "front",
      zone: "sheets",
      region: [
        [0, 0],
        [width, 0],
        [width, 1000],
        [0, 1000],
      ] as const,
      holes: [],
      width,
      along: "y" as const,
    });
    const faces = [{ ...front, joints: [joint("sheet joint", 50), joint("edge", 10)] }];
    const { areas } = takeOff(wallProject(), { ...facade, faces }, undefined);
    // 0.05 m² of joint beside 0.95 m² of sheet.
    expect(areas[1]?.openSharePercent).toBeCloseTo(5, 9);
  });

  it("carry membranes and insulation, by kind and thickness", () => {
    const layers = [
      { kind: "insulation", material: "mineral wool board", z: [0, 51] },
      { kind: "membrane", z: [51, 51] },
      { kind: "batten", z: [51, 76] },
    ] as const;
    const plane = (zone: string) => ({ face: "front", zone, layers, faceZ: 96, backZ: 76, cavity: 25 });
    const takeoff = taken(wallProject(), [], { planes: [plane("boards"), plane("sheets")] });
    expect(takeoff.layers).toEqual([
      { kind: "insulation", material: "mineral wool board", thickness: 51, areaM2: 5 },
      { kind: "membrane", thickness: 0, areaM2: 5 },
    ]);
  });
});

describe("masses and metres", () => {
  it("sum by kind and material", () => {
    const { masses, massKg } = taken(wallProject(), [
      batten("L1", 1000, { massKg: 1.25 }),
      batten("L2", 1000, { massKg: 2.5 }),
      sheet("S1", 600, 600, { massKg: 5, material: "fibre cement" }),
    ]);
    expect(masses).toEqual([
      { kind: "batten", material: "spruce-pine-fir", count: 2, massKg: 3.75 },
      { kind: "sheet", material: "fibre cement", count: 1, massKg: 5 },
    ]);
    expect(massKg).toBe(8.75);
  });

  it("run along closures and gaskets", () => {
    const strip = (mark: string, kind: "closure" | "gasket", length: number, width: number): Piece =>
      pieceOf(mark, kind, { length, width, thickness: 1 }, { material: kind });
    const { closures, gaskets } = taken(wallProject(), [
      strip("N1", "closure", 1500, 25),
      strip("N2", "closure", 2500, 25),
      strip("N3", "closure", 1000, 38),
      strip("G1", "gasket", 2400, 64),
    ]);
    expect(closures.map(({ width, metres }) => [width, metres])).toEqual([
      [25, 4],
      [38, 1],
    ]);
    expect(gaskets.map(({ width, metres }) => [width, metres])).toEqual([[64, 2.4]]);
  });
});

describe("finish", () => {
  it.each([
    ["charred, brushed, oiled on all sides, three oil coats", 3],
    ["oiled on all sides, two coats", 2],
    ["1 coat of oil", 1],
    ["huilé sur toutes les faces, deux fines couches", 2],
    ["une couche d'huile", 1],
    ["oiled on 4 sides", undefined],
    ["oiled", undefined],
  ])("%s: %s coats", (finish, coats) => {
    expect(coatsIn(finish)).toBe(coats);
  });

  const project = (boards: Parameters<typeof wallProject>[0]) => wallProject(boards);
  // A board of 1000 × 100 × 20: 2 · (0.100 + 0.020 + 0.002) = 0.244 m² on its six sides.
  const one = [board("B1", 1000, 100)];

  it("covers all six sides of a board", () => {
    expect(taken(project({ boards: { finish: "oiled" } }), one).finishes[0]?.areaM2).toBeCloseTo(0.244, 9);
  });

  it("takes litres by the coverage of sawn or weathered wood for boards of a pile", () => {
    // Wood Handbook, chapter 16: 2.4 to 4.9 m² a litre and coat on sawn or weathered wood, 4.9 to 9.8 on smooth wood.
    const [line] = taken(project({ boards: { lots: ["A"], finish: "three oil coats" } }), one).finishes;
    expect(line?.litres?.most).toBeCloseTo((3 * 0.244) / 2.4, 9);
    expect(line?.litres?.least).toBeCloseTo((3 * 0.244) / 4.9, 9);
  });

  it("spans both coverages where the surface is not in the file", () => {
    const { lots: _lots, ...boards } = project({ boards: { finish: "three oil coats" } }).claddings[0] as {
      lots?: string[];
    };
    const bare = project({});
    const claddings = bare.claddings.map((each) => (each.kind === "boards" ? (boards as typeof each) : each));
    const [line] = taken({ ...bare, claddings }, one).finishes;
    expect(line?.coverage).toMatchObject({ least: 2.4, most: 9.8 });
  });

  it.each(["pine tar, two coats", "oiled"])("of %s gives no litres, and the order says so", (finish) => {
    const takeoff = taken(project({ boards: { finish } }), one);
    expect(takeoff.finishes[0]?.litres).toBeUndefined();
    expect(ordered(takeoff, "finish")).toEqual([]);
    expect(ordered(takeoff, "finish-unknown")).toMatchObject([{ unit: "m2", ordered: 1 }]);
  });
});

describe("consumables", () => {
  const used = (takeoff: ReturnType<typeof taken>, key: string) =>
    takeoff.order.consumables.filter(({ item }) => item.key === `schedule.order.${key}`);

  it("counts the metres that a blade saws: each cut right through its region", () => {
    // By hand: 1200 × 1000 out of 1220 × 2440 is a cut of 1220 across and one of 1000 up the strip, or 2440 and 1200.
    const [line] = used(taken(wallProject(), [sheet("S1", 1200, 1000)]), "blade-sheets");
    expect([2.22, 3.64]).toContainEqual(Number(line?.item.values?.metres));
    expect(line).toMatchObject({ unit: "piece", ordered: 1 });
    // A batten 64 wide, cut at both ends.
    const [wood] = used(taken(wallProject(), [batten("L1", 1000)]), "blade-wood");
    expect(Number(wood?.item.values?.metres)).toBeCloseTo(0.128, 9);
  });

  it("a bit for about 500 screws, shared by screws of one driver (common practice)", () => {
    const lines = used(
      taken(wallProject(), [
        batten("L1", 1000, { fixings: [...screws("batten-100", 501), ...screws("board-45", 3)] }),
      ]),
      "bit",
    );
    const count = lines.reduce((sum, { item }) => sum + Number(item.values?.count), 0);
    const own = used(
      taken(wallProject(), [
        batten("L1", 1000, { fixings: [...screws("batten-100", 501), ...screws("board-45", 3)] }),
      ]),
      "bit-of-screw",
    );
    expect(count + own.reduce((sum, { item }) => sum + Number(item.values?.count), 0)).toBe(504);
    expect([...lines, ...own].every(({ needed, ordered }) => ordered === Math.ceil(needed))).toBe(true);
  });

  it("seals both ends of boards and all edges of sheets where the project says so, 5 % spare", () => {
    const project = wallProject({ boards: { lots: ["A"], cutEnds: "sealed" }, sheets: { cutEdges: "bare" } });
    const pieces = [board("B1", 900, 94), sheet("S1", 600, 1000)];
    expect(used(taken(project, pieces), "sealer")).toMatchObject([{ unit: "m", needed: 0.188, ordered: 1 }]);
    const both = wallProject({ boards: { cutEnds: "bare" }, sheets: { cutEdges: "sealed" } });
    expect(used(taken(both, pieces), "sealer")).toMatchObject([{ needed: 3.2, ordered: 4 }]);
  });

  it("tapes every strip of membrane and round openings; none without membrane", () => {
    const strip = pieceOf("M1", "membrane", { length: 3000, width: 1500, thickness: 0.5 });
    // The wall's window is 1000 × 1000.
    expect(used(taken(wallProject(), [strip]), "tape")).toMatchObject([{ needed: 7, ordered: 8 }]);
    expect(used(taken(wallProject(), []), "tape")).toEqual([]);
  });

  it("adds a day a coat to the finish (common practice)", () => {
    const takeoff = taken(wallProject({ boards: { finish: "three oil coats" } }), [board("B1", 1000, 100)]);
    expect(takeoff.finishes[0]?.dryingDays).toBe(3);
  });
});

describe("order", () => {
  it.each([
    // 5 % spare, in packs of 100 (common practice): 95 and 4.75 are one pack, 96 and 4.8 are two.
    [95, 1],
    [96, 2],
    [200, 3],
  ])("%d screws come in %d packs", (count, packs) => {
    const [line] = ordered(
      taken(wallProject(), [batten("L1", 1000, { fixings: screws("batten-100", count) })]),
      "screw",
    );
    // 0.42 a screw in the project.
    expect(line).toMatchObject({ unit: "pack", needed: count / 100, ordered: packs, unitPrice: 42 });
    expect(line?.amount).toBeCloseTo(42 * packs, 9);
  });

  it("keeps a spare sheet of the largest size in use", () => {
    const stock = {
      sheets: [
        { id: "s2440", width: 1220, height: 2440, price: 100 },
        { id: "s3050", width: 1220, height: 3050, price: 130 },
      ],
    };
    const pieces = [sheet("S1", 1200, 2400), sheet("S2", 1200, 3000)];
    const takeoff = taken(wallProject({ stock, sheets: { stock: ["s2440", "s3050"] } }), pieces);
    // 3 % of two sheets is a part of one.
    expect(
      ordered(takeoff, "sheet").map(({ id, needed, ordered, amount }) => [id, needed, ordered, amount]),
    ).toEqual([
      ["s2440", 1, 1, 100],
      ["s3050", 1, 2, 260],
    ]);
  });

  it("keeps none where no more can be had", () => {
    const stock = { sheets: [{ id: "s2440", width: 1220, height: 2440, price: 100, count: 1 }] };
    const takeoff = taken(wallProject({ stock }), [sheet("S1", 1200, 2400)]);
    expect(ordered(takeoff, "sheet")).toMatchObject([{ needed: 1, ordered: 1 }]);
  });

  it("adds battens and backing of one section up", () => {
    const stock = { battens: [{ id: "b38x89", thickness: 38, width: 89, lengths: [2440], pricePerM: 1 }] };
    const takeoff = taken(wallProject({ stock }), [
      batten("L1", 2000, { stock: "b38x89", cut: { length: 2000, width: 89, thickness: 38 } }),
      pieceOf("K1", "backing", { length: 2000, width: 89, thickness: 38 }),
    ]);
    // Two and one spare, 2.44 each.
    expect(ordered(takeoff, "batten")).toMatchObject([
      { id: "b38x89", unit: "length", needed: 2, ordered: 3, unitPrice: 2.44, amount: 7.32 },
    ]);
  });

  it("leaves open what has no price, and counts it", () => {
    const stock = { sheets: [{ id: "s2440", width: 1220, height: 2440 }] };
    const { order } = taken(wallProject({ stock }), [sheet("S1", 1200, 2400), batten("L1", 2000)]);
    expect(order.lines.map(({ unitPrice, amount }) => [unitPrice, amount])).toEqual([
      [undefined, undefined],
      // One batten and one spare of 2.44 m at 2 a metre.
      [4.88, 9.76],
    ]);
    expect(order).toMatchObject({ sum: 9.76, withoutPrice: 1 });
  });

  it("names boards that are still to find by the metre, the longest rounded up", () => {
    const takeoff = taken(wallProject({ pile: pileOf([]) }), [board("B1", 900), board("B2", 1500.2)]);
    expect(ordered(takeoff, "boards-to-find")).toMatchObject([
      { unit: "m", needed: 2.4002, ordered: 3, item: { values: { count: 2, longest: 1500.5 } } },
    ]);
  });

  it("without a cut plan still counts what is not sawn", () => {
    const takeoff = takeOff(
      wallProject(),
      wallFacade([sheet("S1", 600, 600, { fixings: screws("sheet-38", 4) })]),
      undefined,
    );
    expect(takeoff.order.lines.map(({ item }) => item.key)).toEqual(["schedule.order.screw"]);
    expect(takeoff.pieces.length).toBe(1);
  });
});
