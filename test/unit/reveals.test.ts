/**
 * Returns worked by hand on two examples: the l-plan, whose frames stand before bucks in 60 mm of insulation, and the
 * two-storey house, two of whose frames are set back into the studs. Sizes without a source are common practice.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { readDocument } from "../../src/project/read.ts";
import { faceElevation } from "../../src/scene/views/face-elevation.ts";
import { verticalSection } from "../../src/scene/views/vertical-section.ts";
import { removalOf } from "../../src/setout/removal/reach.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { designed } from "../helpers/designed.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function made(name: string, edit: (opening: (id: string) => Loose, document: Loose) => void = () => {}) {
  const document: Loose = JSON.parse(readFileSync(`examples/${name}.outerleaf.json`, "utf8"));
  edit(
    (id) => document.faces.flatMap(({ openings }: Loose) => openings).find((one: Loose) => one.id === id),
    document,
  );
  const result = readDocument(document, name);
  if (!result.ok) return { refused: result.findings.map(({ code, where }) => [code, where.path]) } as never;
  const laid = designed(result.project);
  return {
    ...laid,
    said: (opening: string, code = "S027") =>
      laid.findings(code).filter(({ where }) => where.opening === opening),
  };
}

const refused = (edit: Parameters<typeof made>[1]) =>
  (made("l-plan", edit) as unknown as { refused: unknown }).refused;

const lPlan = made("l-plan");
const house = made("two-storey");

describe("returns before bucks", () => {
  it("reach from 5 before the frame to 2 behind the cladding's back", () => {
    // Sheets' back 60 + 38 + 1 = 99, their plane 107: 107 − 10 is the reveal, 97 − 15 the return.
    expect(lPlan.of("EAST-Tl-W3")).toMatchObject({
      kind: "return",
      z: [15, 97],
      outline: [
        [1500, 1209.9],
        [1508, 1209.9],
        [1508, 2084],
        [1500, 2084],
      ],
      cut: { length: 874.1, width: 82, thickness: 8 },
    });
    // Boards' back 85.
    expect(lPlan.of("COURT-N-Tr-W4")).toMatchObject({ z: [15, 83], cut: { width: 68, thickness: 20 } });
    expect(lPlan.said("W3")).toMatchObject([{ outcome: "pass", demand: 82, limit: 50 }]);
  });

  it("stand 6 over a sill that falls 6 % from the frame and laps the flashing below", () => {
    // New Zealand E2/AS1: 5 mm of cladding over a flashing; Ontario Building Code 9.27.3.8: 6 % outward.
    const sill = lPlan.of("EAST-Hr-W3");
    expect(sill?.profile).toEqual([
      [12, 1214.08],
      [12, 1204.08],
      [80, 1200],
    ]);
    expect((1204.08 - 1200) / (80 - 12)).toBeCloseTo(0.06, 9);
    const under = 1200 + (80 - 15) * 0.06;
    expect((lPlan.of("EAST-Tl-W3")?.outline[0]?.[1] ?? 0) - under).toBeCloseTo(6, 9);
    // The flashing below begins at the cavity's back, 2 under the opening.
    const below = lPlan.of("EAST-Hs-W3");
    expect(below?.z[0]).toBe(60);
    expect(below?.profile?.[1]?.[1]).toBe(1198);
  });

  it("keep the head's drip before them and the head's flashing over them", () => {
    const head = lPlan.of("EAST-Th-W3");
    const flashing = lPlan.of("EAST-Hh-W3");
    expect(head?.outline[2]).toEqual([2698, 2100]);
    const drip = flashing?.profile?.at(-1) ?? [0, 0];
    expect(drip[1] - 2100).toBe(2);
    expect(drip[0] - (head?.z[1] ?? 0)).toBe(20);
    // Jambs stop the sheets' joint of 8 under it.
    expect(2092 - (lPlan.of("EAST-Tl-W3")?.outline[2]?.[1] ?? 0)).toBe(8);
  });

  it("are screwed along the wall into the bucks, fixed in the middle and sliding at the ends", () => {
    const { fixings = [], supports } = lPlan.of("EAST-Tl-W3") ?? {};
    expect(supports).toEqual(["EAST-Kbl-W3"]);
    expect(fixings.map(({ kind }) => kind)).toEqual(["sliding", "fixed", "sliding"]);
    for (const { x, side, bite, through } of fixings) {
      // 48 is 12 inside the buck's outer side, 33 and 49 from the return's edges: the data sheet asks 25 to 70.
      expect({ x, side, bite }).toEqual({ x: 1508, side: { z: 48, towards: "left" }, bite: 30 });
      expect(through).toEqual([{ what: "sheet", thickness: 8 }]);
    }
    // 50 from the corners, and no more than 600 apart.
    expect(fixings.map(({ y }) => y)).toEqual([1259.9, 1646.95, 2034]);
    const boards = lPlan.of("COURT-E-Tr-D2")?.fixings ?? [];
    expect(boards.every(({ kind, hole, bite }) => kind === "plain" && hole === 5 && bite === 25)).toBe(true);
    expect(boards.map(({ y }) => y)).toEqual([60, 550.5, 1041, 1531.5, 2022]);
  });

  it("stand 10 over a door's threshold, where no sill is bent", () => {
    expect(lPlan.of("COURT-E-Tl-D2")?.outline[0]).toEqual([1500, 10]);
    expect(lPlan.of("COURT-E-Hr-D2")).toBeUndefined();
  });
});

describe("returns in the depth of the studs", () => {
  it("are held by trimmers and header where there is no buck", () => {
    // Cladding's back 28; the studs' outer side −12: the middle, −14.5, lies too near it.
    expect(house.of("EAST-Tl-W7")).toMatchObject({ z: [-55, 26], supports: ["east trimmer 5"] });
    const head = house.of("EAST-Th-W7")?.fixings ?? [];
    expect(head.map(({ x, y, side, into, bite }) => ({ x, y, side, into, bite }))).toEqual(
      [4252, 4748].map((x) => ({
        x,
        y: 2078,
        side: { z: -24, towards: "up" },
        into: "east header 2",
        bite: 28,
      })),
    );
  });
});

describe("what is said of returns", () => {
  const outcome = (from: ReturnType<typeof made>, opening: string) =>
    from.said(opening).map(({ outcome, says }) => [outcome, says.key]);

  it("a reveal too shallow for the screws' edge distances, and no room to bend a trim", () => {
    const demo = made("atelier-bouleau", (opening, { limits }) => {
      Object.assign(opening("W3"), { reveal: {} });
      limits.clearances.jamb.value = 7;
    });
    // 98 − 71: 27; nothing is left between 71 + 5 and 78 − 2, and two edges of 20 are asked. 7 − 2 is a leg under 6.
    expect(demo.said("W3")).toMatchObject([
      {
        outcome: "fail",
        demand: 0,
        limit: 40,
        says: { key: "setout.return.shallow", values: { reveal: 27 } },
      },
    ]);
    expect(demo.pieces.filter(({ kind }) => kind === "return")).toEqual([]);
    expect(demo.of("W-Hjl-W3")).toBeUndefined();
  });

  it("a reveal deeper than the boards are wide", () => {
    const deep = made("two-storey", (opening) => Object.assign(opening("W7"), { frameProjection: -100 }));
    // 26 + 95 of a board 115 wide.
    expect(deep.said("W7")).toMatchObject([
      { outcome: "fail", demand: 121, limit: 115, says: { key: "setout.return.wide" } },
    ]);
  });

  it("no timber where the screws must stand", () => {
    // From 35 to 97 the screws stand at 60 or further out: past the buck.
    const far = made("l-plan", (opening) => Object.assign(opening("W3"), { frameProjection: 30 }));
    expect(outcome(far, "W3")).toEqual([["fail", "setout.return.unheld"]]);
    expect(far.of("EAST-Hr-W3")).toBeUndefined();
  });

  it("a wide board that takes two rows, of which the timber holds one", () => {
    // 86 wide from −60 to 26: quarter points at −38.5 and 4.5, of which one lies in the sheathing.
    const wide = made("two-storey", (opening, { claddings }) => {
      opening("W7").frameProjection = -65;
      for (const one of claddings) if (one.kind === "boards") one.twoScrewsFrom.value = 80;
    });
    expect(outcome(wide, "W7")).toEqual([["fail", "setout.return.unheld"]]);
  });

  it("a frame whose depth is not given", () => {
    const unknown = made("l-plan", (_, { faces }) => {
      for (const face of faces) delete face.frameProjection;
    });
    expect(outcome(unknown, "W3")).toEqual([["cannot evaluate", "setout.return.no-frame"]]);
  });

  it("a recess, which faces line", () => {
    const demo = made("atelier-bouleau", (opening) => Object.assign(opening("R1"), { reveal: {} }));
    expect(outcome(demo, "R1")).toEqual([["fail", "setout.return.recess"]]);
  });

  it("a screw that bites too little", () => {
    const short = made("l-plan", (_, { stock }) => {
      for (const screw of stock.screws) if (screw.id === "sheet-38") screw.length = 32;
    });
    expect(short.said("W3", "S016")).toMatchObject([{ outcome: "fail", demand: 24, limit: 25 }]);
  });

  it("a frame behind the cladding passes once it is lined", () => {
    expect(lPlan.said("W3", "P012")).toMatchObject([
      { outcome: "pass", says: { key: "proof.frame.lined", values: { off: 89, reveal: 97 } } },
    ]);
    const open = made("l-plan", (opening) => delete opening("W3").reveal);
    expect(open.said("W3", "P012")).toMatchObject([{ outcome: "attention" }]);
    expect(open.said("W3")).toEqual([]);
  });
});

describe("trims of a reveal too shallow for returns", () => {
  const demo = made("atelier-bouleau", (opening) => Object.assign(opening("W3"), { reveal: {} }));
  const left = demo.of("W-Hjl-W3");

  it("go from under the boards back along the batten and across to the frame", () => {
    // Batten to 2090, its front 78; the cavity's back 51 and 2 of play; the frame's side 2100 less 2.
    expect(left?.planProfile).toEqual([
      [2075, 78],
      [2090, 78],
      [2090, 53],
      [2098, 53],
    ]);
    expect(demo.of("W-Hjr-W3")?.planProfile).toEqual([
      [2725, 78],
      [2710, 78],
      [2710, 53],
      [2702, 53],
    ]);
    expect(demo.said("W3")).toMatchObject([{ outcome: "pass", says: { key: "setout.trim" } }]);
  });

  it("are cut from the legs less the handbook's deduction at two bends", () => {
    // Machinery's Handbook: 0.64 t + 1.57 r along a right angle; each leg ends r + t before its outer corner.
    const [t, r] = [0.6, 1];
    const flat = 15 - (r + t) + (25 - 2 * (r + t)) + (8 - (r + t)) + 2 * (0.64 * t + 1.57 * r);
    expect(left?.cut.width).toBeCloseTo(flat, 1);
    expect(left?.cut).toMatchObject({ length: 594, thickness: 0.6 });
  });

  it("leave air and water their way at sill and head, and the cladding its clearance", () => {
    const [, high] = [left?.outline[0]?.[1] ?? 0, left?.outline[2]?.[1] ?? 0];
    expect(left?.outline[0]?.[1]).toBe(1506);
    expect((demo.of("W-Hh-W3")?.outline[0]?.[1] ?? 0) - high).toBe(2);
    // Steel moves 0.012 mm/m K: 594 mm over 80 K takes 0.6 of these 2.
    expect(0.594 * 0.012 * 80).toBeLessThan(2);
    const plain = made("atelier-bouleau");
    expect(demo.facade.faces.map(({ vents }) => vents)).toEqual(plain.facade.faces.map(({ vents }) => vents));
    expect(demo.facade.faces.map(({ joints }) => joints)).toEqual(
      plain.facade.faces.map(({ joints }) => joints),
    );
  });

  it("come off after the boards over their flange, and before their batten", () => {
    const over = demo.pieces.filter(({ mark }) => left?.removeBefore.includes(mark));
    expect(over.length).toBeGreaterThan(3);
    expect(over.every(({ kind, outline }) => kind === "board" && (outline[1]?.[0] ?? 0) > 2075)).toBe(true);
    expect(left?.supports).toEqual(["W-L15a"]);
    expect(removalOf(demo.facade, "W-L15a")?.steps.map(({ mark }) => mark)).toContain("W-Hjl-W3");
  });

  it("end on the opening's side before a frame behind the cavity", () => {
    // Frame 45 and 5 of joint: 10 before the cavity's back, 60.
    const deep = made("l-plan", (opening) => Object.assign(opening("W3"), { frameProjection: 45 }));
    expect(deep.of("EAST-Hjl-W3")?.planProfile?.slice(2)).toEqual([
      [1490, 62],
      [1500, 62],
      [1500, 50],
    ]);
    expect(deep.said("W3", "P012")).toMatchObject([
      { outcome: "pass", where: { marks: ["EAST-Hjl-W3", "EAST-Hjr-W3"] } },
    ]);
  });

  it("are scheduled and ordered as other bent metal, and drawn behind the boards and beyond a section", () => {
    const takeoff = takeOff(demo.project, demo.facade, undefined);
    expect(takeoff.pieces.find(({ mark }) => mark === "W-Hjl-W3")).toMatchObject({ kind: "flashing" });
    const line = takeoff.flashings.find(({ width }) => width === left?.cut.width);
    expect(line?.metres).toBeCloseTo(2 * 0.594, 9);
    const items = faceElevation(demo.facade, demo.project, "west")?.items ?? [];
    const at = items.findIndex(({ of }) => of === "W-Hjl-W3");
    const board = items.findIndex(({ of }) => of === left?.removeBefore[0]);
    expect(at).toBeGreaterThan(-1);
    expect(at).toBeLessThan(board);
    const section = verticalSection(demo.facade, demo.project, { face: "west", x: 2400, y: [1400, 2200] });
    expect(section?.items.some(({ of }) => of === "W-Hjr-W3")).toBe(true);
    expect(section?.items.some(({ of }) => of === "W-Hjl-W3")).toBe(false);
  });

  it("are none where the frame reaches the cladding's plane", () => {
    const flush = made("atelier-bouleau", (opening) =>
      Object.assign(opening("W3"), { reveal: {}, frameProjection: 98 }),
    );
    expect(flush.said("W3")).toMatchObject([{ outcome: "fail", says: { key: "setout.return.shallow" } }]);
  });
});

describe("returns of another cladding", () => {
  const mixed = made("l-plan", (opening) =>
    Object.assign(opening("W4"), { reveal: { cladding: "white-sheets", gap: 8 } }),
  );

  it("are cut from its stock, and held as it asks", () => {
    const left = mixed.of("COURT-N-Tl-W4");
    expect(left).toMatchObject({ cladding: "white-sheets", z: [18, 83], cut: { width: 65, thickness: 8 } });
    expect(left?.fixings.map(({ kind }) => kind)).toContain("fixed");
    const { plan } = cutFacade(mixed.project, mixed.facade);
    const placed = plan?.sheets.flatMap(({ request }) => request.demands.map(({ id }) => id));
    expect(placed).toContain("COURT-N-Tl-W4");
    const line = takeOff(mixed.project, mixed.facade, plan).pieces.find(
      ({ mark }) => mark === "COURT-N-Tl-W4",
    );
    expect(line).toMatchObject({ kind: "return", material: "fibre cement without wood fibre" });
    expect(line?.finish).toBeUndefined();
  });

  it("are refused where the file has no such cladding", () => {
    const unknown = refused((opening) =>
      Object.assign(opening("W4"), { reveal: { cladding: "wite-sheets" } }),
    );
    expect(unknown).toEqual([["F010", "/faces/2/openings/0/reveal/cladding"]]);
  });
});

describe("returns with the rest of the facade", () => {
  it("are parted where they are longer than their stock", () => {
    const short = made("l-plan", (_, { claddings }) => {
      for (const one of claddings) if (one.kind === "boards") one.maxPieceLength = 1500;
    });
    const parts = short.pieces.filter(({ mark }) => /-Tl.?-D2$/.test(mark));
    expect(parts.map(({ mark, cut }) => [mark, cut.length])).toEqual([
      ["COURT-E-Tla-D2", 1027],
      ["COURT-E-Tlb-D2", 1027],
    ]);
  });

  it("are sawn, scheduled and finished", () => {
    const { plan } = cutFacade(lPlan.project, lPlan.facade);
    const takeoff = takeOff(lPlan.project, lPlan.facade, plan);
    const returns = lPlan.pieces.filter(({ kind }) => kind === "return").map(({ mark }) => mark);
    // Nine openings with three sides.
    expect(returns).toHaveLength(27);
    expect(takeoff.pieces.filter(({ kind }) => kind === "return").map(({ mark }) => mark)).toEqual(returns);
    expect(takeoff.pieces.find(({ mark }) => mark === "COURT-N-Th-W4")?.finish).toBe(
      "oiled on all sides, two coats",
    );
    const sawn = [
      ...(plan?.sheets ?? []).flatMap(({ result }) =>
        result.plan.sheets.flatMap((sheet) => JSON.stringify(sheet)),
      ),
      ...(plan?.boards.bought ?? []).flatMap(({ result }) =>
        result.plan.bars.map((bar) => JSON.stringify(bar)),
      ),
    ].join();
    expect(returns.filter((mark) => !sawn.includes(`"${mark}"`))).toEqual([]);
  });

  it("come off singly, and before what holds them", () => {
    expect(removalOf(lPlan.facade, "EAST-Tl-W3")?.steps.map(({ mark }) => mark)).toEqual(["EAST-Tl-W3"]);
    expect(removalOf(lPlan.facade, "EAST-Kbl-W3")?.steps.map(({ mark }) => mark)).toContain("EAST-Tl-W3");
    expect(removalOf(lPlan.facade, "EAST-Hr-W3")?.steps.map(({ mark }) => mark)).toEqual([
      "EAST-Tl-W3",
      "EAST-Tr-W3",
      "EAST-Hr-W3",
    ]);
  });

  it("are drawn over their frame in elevation, and in section cut and beyond", () => {
    const elevation = faceElevation(lPlan.facade, lPlan.project, "east");
    const drawn = elevation?.items.filter(({ of }) => of === "EAST-Tl-W3" || of === "W3") ?? [];
    const at = drawn.findIndex(({ of }) => of === "EAST-Tl-W3");
    expect(drawn.slice(0, at).some(({ kind, of }) => kind === "polygon" && of === "W3")).toBe(true);
    expect(drawn.slice(at + 1).some(({ kind }) => kind === "polygon")).toBe(false);
    const section = verticalSection(lPlan.facade, lPlan.project, { face: "east", x: 2100, y: [1100, 2300] });
    const parts = (mark: string) => section?.items.filter(({ of }) => of === mark) ?? [];
    expect(parts("EAST-Th-W3").some(({ kind }) => kind === "polygon")).toBe(true);
    // The screw at the head's middle stands in the plane.
    expect(parts("EAST-Th-W3").filter(({ layer }) => layer.includes("FIXING"))).toHaveLength(2);
    expect(parts("EAST-Tr-W3").length).toBeGreaterThan(0);
    expect(parts("EAST-Tl-W3")).toEqual([]);
  });
});
