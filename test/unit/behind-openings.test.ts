/** Pans, bucks, level joints and sleeves, worked by hand on the demo. Sizes: common practice, named where they are set. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { removalOf } from "../../src/setout/removal/reach.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { designed } from "../helpers/designed.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function demo(edit: (document: Loose) => void = () => {}, name = "atelier-bouleau") {
  const document = JSON.parse(readFileSync(`examples/${name}.outerleaf.json`, "utf8"));
  edit(document);
  const result = readDocument(document, "openings");
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  return designed(result.project);
}

const made = demo();

describe("sill pans", () => {
  it("lie under every window and door, and under no recess", () => {
    const pans = made.pieces.filter(({ kind, profile }) => kind === "membrane" && profile);
    expect(pans.map(({ mark }) => mark)).toEqual(["W-Mp-W3", "F-Mp-D1", "F-Mp-W2", "N-Mp-W4", "RB-Mp-D2"]);
  });

  it("have the size that they are folded from", () => {
    // 140 of studs, 11 of sheathing, 51 of wool; 25 up at the back and 150, the membrane's lap, down in front.
    expect(made.of("W-Mp-W3")?.cut).toEqual({
      length: 600 + 2 * 150,
      width: 25 + 140 + 11 + 51 + 150,
      thickness: 1,
    });
    expect(made.of("N-Mp-W4")?.cut.width).toBe(25 + 140 + 11 + 150);
  });

  it("say where the wall ends before the pan has lapped", () => {
    // The cladding's base lies 50 under the door: 50 is the least lap, 40 is none.
    expect(
      made.findings("S021").some(({ where, outcome }) => where.opening === "D1" && outcome !== "pass"),
    ).toBe(false);
    const raised = demo((document) => {
      for (const face of document.faces) if (face.id === "recess-back") face.openings[0].y = [-10, 2100];
    });
    const [said] = raised.findings("S021").filter(({ where }) => where.opening === "D2");
    expect(said).toMatchObject({ outcome: "attention", demand: 40, limit: 50 });
  });
});

describe("bucks", () => {
  it("line openings through insulation outside the sheathing, as deep as it is", () => {
    expect(made.of("W-Kbl-W3")).toMatchObject({ z: [0, 51], cut: { length: 600, width: 51, thickness: 38 } });
    expect(made.of("W-Kbh-W3")?.cut.length).toBe(600 + 2 * 38);
    expect(made.pieces.filter(({ mark }) => /-Kb\w+-W4$/.test(mark))).toEqual([]);
  });

  it("share what is left between two openings, and say so", () => {
    const near = demo((document) => {
      const front = document.faces.find(({ id }: Loose) => id === "front");
      front.openings.find(({ id }: Loose) => id === "W2").x = [2000, 3550];
    });
    // 61.5 between window and door: half for each.
    expect(near.of("F-Kbr-W2")?.cut.thickness).toBe(30.75);
    expect(near.of("F-Kbl-D1")?.cut.thickness).toBe(30.75);
    const said = near.findings("S021").filter(({ where }) => where.opening === "W2");
    expect(said).toMatchObject([{ outcome: "attention", demand: 30.75, limit: 38 }]);
  });

  it("are screwed through the sheathing into the timber round the opening", () => {
    // 140 of screw less 51 of liner and 11 of sheathing; 50 from the ends, or 40 off a screw of the batten before it.
    const batten = made.of("W-L15a")?.fixings.filter(({ y }) => y > 1500 && y < 2100) ?? [];
    expect(made.of("W-Kbl-W3")?.fixings).toMatchObject([
      { x: 2081, into: "west trimmer 1", bite: 78 },
      { x: 2081, into: "west trimmer 1", bite: 78 },
    ]);
    for (const [i, wanted] of [1550, 2050].entries()) {
      const y = made.of("W-Kbl-W3")?.fixings[i]?.y ?? Number.NaN;
      const near = batten
        .map((other) => Math.hypot(other.x - 2081, other.y - wanted))
        .some((away) => away < 40);
      const apart = batten.map((other) => Math.hypot(other.x - 2081, other.y - y));
      if (near) expect(Math.min(...apart)).toBeCloseTo(40, 3);
      else expect(y).toBe(wanted);
    }
    expect(made.of("W-Kbl-W3")?.fixings[0]?.through).toEqual([
      { what: "backing", thickness: 51 },
      { what: "sheathing", thickness: 11 },
    ]);
    expect(made.of("W-Kbh-W3")?.supports).toEqual(["west header 1"]);
  });

  it("let the battens' screws through, which are told so, and come off after those battens", () => {
    const batten = made.pieces.find(({ mark }) => mark === "W-L15a");
    const past = batten?.fixings.filter(({ y }) => y > 1500 && y < 2100) ?? [];
    for (const { through } of past) {
      expect(through.slice(-2)).toEqual([
        { what: "backing", thickness: 51 },
        { what: "sheathing", thickness: 11 },
      ]);
      expect(through.some(({ what }) => what === "insulation")).toBe(false);
    }
    expect(past.length).toBeGreaterThan(0);
    const below = batten?.fixings.filter(({ y }) => y < 1400) ?? [];
    expect(below[0]?.through).toContainEqual({ what: "insulation", thickness: 51 });
    expect(made.of("W-Kbl-W3")?.removeBefore).toContain("W-L15a");
    const way = removalOf(made.facade, "W-Kbl-W3")?.steps.map(({ mark }) => mark) ?? [];
    expect(way.indexOf("W-L15a")).toBeGreaterThan(0);
    expect(way.at(-1)).toBe("W-Kbl-W3");
  });

  it.each(["atelier-bouleau", "l-plan"])(
    "keep their screws off the battens' in the same timber: %s",
    (name) => {
      const { pieces } = demo(() => {}, name);
      const battens = pieces.filter(({ kind }) => kind === "batten");
      for (const buck of pieces.filter(({ mark }) => /-Kb[lrhs]/.test(mark))) {
        const own = battens.filter(({ face }) => face === buck.face).flatMap(({ fixings }) => fixings);
        for (const at of buck.fixings) {
          const away = own
            .filter(({ into }) => into === at.into)
            .map(({ x, y }) => Math.hypot(x - at.x, y - at.y));
          expect(Math.min(...away, 999), buck.mark).toBeGreaterThanOrEqual(40 - 0.001);
        }
      }
    },
  );

  it("find the studs under a sill, where nothing runs level", () => {
    const wide = demo((document) => {
      document.faces.find(({ id }: Loose) => id === "west").openings[0].x = [1500, 3300];
    });
    const sill = wide.of("W-Kbs-W3");
    // Studs stand at 19 and every 610 from there: 1849, 2459 and 3069, between the trimmers.
    const studs = sill?.fixings.filter(({ into }) => into.includes("stud")).map(({ x }) => x);
    expect(studs).toEqual([1849, 2459, 3069]);
    expect(sill?.fixings).toHaveLength(5);
    expect(wide.findings("S021").map(({ outcome }) => outcome)).not.toContain("fail");
  });

  it("are named where no timber is told that holds them", () => {
    const bare = demo((document) => {
      document.structure.studs.besideOpenings = 0;
    });
    const said = bare.findings("S021").filter(({ outcome }) => outcome === "fail");
    expect(said.map(({ where }) => where.opening)).toContain("W3");
    expect(said.flatMap(({ where }) => where.marks)).toContain("W-Kbl-W3");
  });

  it("stay under a rake, as thick over the opening as it leaves room for", () => {
    // The west wall rises from 2290 by 720 in 4800: 2605 over the window's left jamb.
    const raked = demo((document) => {
      document.faces.find(({ id }: Loose) => id === "west").openings[0].y = [1900, 2585];
    });
    const liners = raked.pieces.filter(({ mark }) => /^W-Kb/.test(mark));
    for (const [x, y] of liners.flatMap(({ outline }) => outline)) {
      expect(y).toBeLessThanOrEqual(2290 + (720 / 4800) * x + 0.001);
    }
    expect(raked.of("W-Kbh-W3")?.cut).toMatchObject({ length: 600 + 2 * 38, thickness: 20 });
    expect(raked.of("W-Kbh-W3")?.outline).toHaveLength(5);
    const said = raked.findings("S021").filter(({ where }) => where.opening === "W3");
    expect(said).toMatchObject([{ outcome: "attention", demand: 20, limit: 38 }]);
  });

  it("are sawn with the rest", () => {
    const { battens } = takeOff(made.project, made.facade, cutFacade(made.project, made.facade).plan);
    expect(battens.some(({ mark }) => mark === "W-Kbl-W3")).toBe(true);
  });
});

describe("level joints of sheets", () => {
  const sheetsWith = (levelJoint: Loose) =>
    demo((document) => {
      for (const one of document.claddings) if (one.kind === "sheets") one.levelJoint = levelJoint;
    });

  it("get a backing strip between battens where the file says nothing, which is a typical choice", () => {
    const strip = made.of("F2-Gh1a");
    expect(strip).toMatchObject({ material: "backing strip", cut: { width: 8 + 2 * 20, thickness: 1 } });
    // Flush with the sheets' back, and between two battens: it touches both and lies in neither.
    const box = polygonBounds(strip?.outline ?? []);
    const battens = made.pieces
      .filter(({ kind, zone, face }) => kind === "batten" && zone === "sheets" && face === "front")
      .map(({ outline }) => polygonBounds(outline))
      .filter(({ y }) => y[0] < box.y[1] && y[1] > box.y[0]);
    expect(battens.some(({ x }) => x[1] === box.x[0])).toBe(true);
    expect(battens.some(({ x }) => x[0] === box.x[1])).toBe(true);
    expect(made.findings("S022").every(({ outcome, provisional }) => outcome === "pass" && provisional)).toBe(
      true,
    );
  });

  it("run past a batten that ends beside a duct between the joint and the strip's edge, with a lower strip", () => {
    // The joint lies from 2122 to 2130, the strip up to 2150; the duct under it lets its batten begin at 2137.
    const duct = { id: "FP1", kind: "duct", x: 3090, y: 2075, diameter: 100 };
    const beside = demo((document) => {
      for (const face of document.faces)
        if (face.id === "front") face.penetrations = [{ ...duct, clearance: { value: 10, basis: "given" } }];
    });
    const boxes = (kind: string, named: RegExp) =>
      beside.pieces
        .filter((piece) => piece.kind === kind && piece.face === "front" && named.test(piece.mark))
        .map(({ outline, cut }) => ({ ...polygonBounds(outline), cut }));
    const strips = boxes("gasket", /-Gh1/);
    const batten = boxes("batten", /./).find(({ x, y }) => x[0] < 3000 && x[1] > 3000 && y[0] > 2130);
    expect(batten?.y[0]).toBeCloseTo(2137, 0);
    const lower = strips.filter(({ y }) => y[1] < 2150);
    expect(lower.map(({ x, y }) => [x[0], ...y])).toEqual([[batten?.x[0], 2102, batten?.y[0]]]);
    expect(lower[0]?.cut.width).toBe((batten?.y[0] ?? 0) - 2102);
    expect(strips.some(({ x, y }) => x[1] === batten?.x[0] && y[1] === 2150)).toBe(true);
  });

  it("get what the file asks for", () => {
    const drip = sheetsWith({ behind: "drip profile", cover: 15 });
    expect(drip.of("F2-Gh1a")).toMatchObject({ material: "drip profile", cut: { width: 8 + 2 * 15 } });
    expect(drip.findings("S022").some(({ provisional }) => provisional)).toBe(false);
    const { gaskets } = takeOff(drip.project, drip.facade, undefined);
    expect(gaskets.some(({ material, width }) => material === "drip profile" && width === 38)).toBe(true);
  });

  it("are named where they stay open", () => {
    const open = sheetsWith({ behind: "open" });
    expect(open.of("F2-Gh1a")).toBeUndefined();
    expect(open.findings("S022").length).toBeGreaterThan(0);
    expect(open.findings("S022").every(({ outcome, hint }) => outcome === "attention" && hint)).toBe(true);
  });
});

describe("what passes the wall", () => {
  it("goes from the studs' inner side to the cladding's plane, a lamp or a tap from the sheathing", () => {
    // 140 + 11 behind the sheathing's face; the boards' plane is 98 out, the sheets' on the east 39.
    expect(made.of("W-V-WP1")).toMatchObject({
      kind: "sleeve",
      z: [-151, 98],
      cut: { length: 249, width: 160 },
    });
    expect(made.of("W-V-WP3")).toMatchObject({ material: "box or block", z: [0, 98] });
    expect(made.of("E-V-EP1")).toMatchObject({ material: "box or block", z: [0, 39] });
  });

  it("is told, and not set out, over the edge of a zone", () => {
    const edge = demo((document) => {
      document.faces.find(({ id }: Loose) => id === "west").penetrations[2].y = -20;
    });
    expect(edge.of("W-V-WP3")).toBeUndefined();
    expect(edge.findings("S023").filter(({ outcome }) => outcome === "attention")).toHaveLength(1);
  });
});
