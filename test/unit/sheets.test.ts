/** Sheet layouts of known walls: the demo's front, pins that hurt or cannot be, notches with their reliefs, lying stock. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readProject } from "../../src/project/read.ts";
import { laySheets } from "../../src/setout/sheets/layout.ts";
import { planColumns } from "../../src/setout/sheets/plan.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";
import { faceProject, faceZone, type SmallFace } from "../helpers/sheet-faces.ts";
import { sheetZones } from "../helpers/sheet-zones.ts";

function demo() {
  const result = readProject(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"), "demo");
  if (!result.ok) throw new Error("the demo does not read");
  return result.project;
}

const PLAIN: SmallFace = { width: 3600, height: 2400, openings: [], stock: [1220, 2440] };
const spans = (face: SmallFace) => planColumns(faceZone(face)).columns.map(({ x }) => x);

describe("the demo", () => {
  it("ends the front's sheets on the door's jambs and its head line, two equal ones over the door", () => {
    const front = sheetZones(demo()).find(({ ground }) => ground.face.id === "front");
    if (!front) throw new Error("the front has sheets");
    const plan = planColumns(front);
    expect(plan.columns.map(({ x }) => x)).toEqual([
      [2410, 3601.5],
      [3609.5, 4801],
      [4809, 6000.5],
      [6008.5, 7223],
    ]);
    expect(new Set(plan.columns.flatMap(({ stack }) => stack.cuts))).toEqual(new Set([2122]));
    expect(plan.score).toMatchObject({ sheets: 6, notches: 0, slivers: 0, oversize: 0, misaligned: 0 });
    expect(plan.bound.unnotched).toBe(6);
  });

  it("says the score and what the best rejected layout would cost", () => {
    const [finding] = design(demo()).facade.findings.filter(
      ({ code, where }) => code === "S004" && where.face === "front",
    );
    if (!finding) throw new Error("the front has a score");
    expect(say(finding.says, ENGLISH_MM)).toMatch(
      /^6 sheets, none notched; .* fewer than 6\. Score [\d.]+: 6 sheets, 4 edges beside the studs\. .* rejected layout costs [\d.]+ more\. Score/,
    );
  });
});

describe("joints between sheets", () => {
  it("say each why they lie where they do: on the demo, worked from its openings", () => {
    const { facade } = design(demo());
    let [jambs, heads, all] = [0, 0, 0];
    for (const { id, joints, openings } of facade.faces) {
      for (const { kind, region, why, along } of joints) {
        if (kind !== "sheet joint") continue;
        all += 1;
        expect(why, id).toBeDefined();
        const { x, y } = polygonBounds(region);
        if (why?.rule.key === "setout.sheets.joint.jamb") {
          jambs += 1;
          // 10 mm clear at each jamb; the joint of 8 lies on the opening's side.
          const edges = openings.flatMap(({ region: { x: own } }) => [own[0] - 10, own[1] + 10 - 8]);
          expect(edges).toContain(x[0]);
          expect(along).toBe("y");
        }
        if (why?.rule.key === "setout.sheets.joint.head") {
          heads += 1;
          expect(openings.map(({ region: { y: own } }) => own[1] + 22)).toContain(y[0]);
        }
      }
    }
    expect([jambs, heads].every((count) => count > 0)).toBe(true);
    expect(all).toBeGreaterThan(20);
  });

  it("carry the best layout without them, with its cost, and nothing where that has them too", () => {
    const zone = faceZone({ ...PLAIN, pinned: { x: [300], y: [700] } });
    const { runnerUp } = planColumns(zone);
    const { joints } = laySheets(zone);
    const pinned = joints.filter(({ why }) => why?.rule.key === "setout.sheets.joint.pin");
    expect(pinned.map(({ along }) => along).sort()).toEqual(expect.arrayContaining(["x", "y"]));
    let [told, silent] = [0, 0];
    for (const { region, why } of joints.filter((one) => one.along === "y")) {
      const [at] = polygonBounds(region).x;
      const stays = runnerUp?.joints.some(({ x }) => x[0] === at);
      expect(why?.runnerUp === undefined).toBe(stays);
      if (why?.runnerUp) {
        told += 1;
        expect(say(why.runnerUp, ENGLISH_MM)).toMatch(/costs [\d.]+ more/);
      } else silent += 1;
    }
    expect([told > 0, silent > 0]).toEqual([true, true]);
  });
});

describe("pins", () => {
  it("that make a sliver are kept, and say where the joint would rather lie", () => {
    const zone = faceZone({ ...PLAIN, pinned: { x: [300] } });
    const laid = laySheets(zone);
    expect(planColumns(zone).columns[0]?.x).toEqual([0, 296]);
    const told = laid.findings.find(({ where }) => where.path === "/faces/0/zones/0/joints/pinned/x/0");
    expect(told).toMatchObject({ code: "S005", outcome: "attention", where: { at: [300, 1200] } });
    if (!told?.hint) throw new Error("the pin has a mend");
    expect(say(told.says, ENGLISH_MM)).toContain("upright joint pinned at 300 mm: kept");
    expect(say(told.hint, ENGLISH_MM)).toContain("Move it to");
    expect(told.edit).toEqual([
      { op: "replace", path: "/faces/0/zones/0/joints/pinned/x/0", value: expect.any(Number) },
    ]);
  });

  it("through an opening's middle part the sheets over and under it", () => {
    const opening = { left: 1200, width: 1200, sill: 800, height: 1000 };
    const face = { ...PLAIN, openings: [opening], pinned: { x: [1800] } };
    expect(spans(face)).toContainEqual([1804, expect.any(Number)]);
    const project = faceProject(face);
    expect(facadeProblems(project, design(project).facade)).toEqual([]);
  });

  it.each([
    ["outside the zone", { pinned: { x: [3700] } }, "reaches from"],
    [
      "in a band that is forbidden",
      { pinned: { x: [1800] }, forbidden: { x: [[1700, 1900]] } },
      "you forbid",
    ],
    ["on another pin's joint", { pinned: { x: [1800, 1805] } }, "another pin"],
  ] as const)("%s are refused with the reason and the mend", (_, wishes, words) => {
    const { findings } = laySheets(faceZone({ ...PLAIN, ...wishes }));
    const refused = findings.filter(({ code }) => code === "S015");
    expect(refused).toHaveLength(1);
    expect(say((refused[0] as (typeof findings)[number]).says, ENGLISH_MM)).toContain(words);
    expect(refused[0]?.edit?.[0]?.op).toBe("remove");
  });
});

describe("forbidden bands", () => {
  it("wider than the stock leave one sheet that is too large, and it fails by name", () => {
    const zone = faceZone({ ...PLAIN, forbidden: { x: [[1000, 3000]] } });
    const { findings } = laySheets(zone);
    expect(planColumns(zone).score.oversize).toBe(1);
    expect(findings.find(({ code }) => code === "S006")).toMatchObject({ outcome: "fail" });
  });
});

describe("a notch that cannot be avoided", () => {
  // No joint may stand at the jambs, so that a sheet must be cut round the window.
  const face: SmallFace = {
    ...PLAIN,
    width: 1200,
    openings: [{ left: 400, width: 400, sill: 900, height: 500 }],
    forbidden: { x: [[100, 1100]] },
  };

  it("has its inner corners drilled first and told, and fills the zone all the same", () => {
    const zone = faceZone(face);
    const laid = laySheets(zone);
    const [rect] = zone.ground.keepOuts.map((one) => one.rect);
    if (!rect) throw new Error("the window is kept clear");
    const reliefs = laid.pieces.flatMap((piece) => piece.reliefs ?? []);
    expect(reliefs.map(({ x, y }) => `${x} ${y}`).sort()).toEqual(
      rect.x.flatMap((x) => rect.y.map((y) => `${x} ${y}`)).sort(),
    );
    expect(new Set(reliefs.map(({ diameter }) => diameter))).toEqual(new Set([8]));
    const told = laid.findings.find(({ code }) => code === "S004");
    expect(told?.outcome).toBe("attention");
    expect(told && say(told.says, ENGLISH_MM)).toContain("4 inner corners are drilled 8 mm first");
    const project = faceProject(face);
    expect(facadeProblems(project, design(project).facade)).toEqual([]);
  });

  it("leaves sheets without a notch alone", () => {
    expect(laySheets(faceZone(PLAIN)).pieces.filter(({ reliefs }) => reliefs)).toEqual([]);
  });
});

describe("lying stock", () => {
  it("spans with its long side what upright stock takes two columns for", () => {
    expect(spans({ ...PLAIN, width: 2400, height: 1200 })).toHaveLength(2);
    expect(spans({ ...PLAIN, width: 2400, height: 1200, lay: "lying" })).toEqual([[0, 2400]]);
    expect(spans({ ...PLAIN, width: 2400, height: 1200, lay: "either" })).toEqual([[0, 2400]]);
  });
});

describe("patterns", () => {
  const tall: SmallFace = { ...PLAIN, height: 4000, stock: [1220, 3050] };
  const cuts = (pattern: NonNullable<SmallFace["pattern"]>) =>
    planColumns(faceZone({ ...tall, pattern })).columns.map(({ stack }) => stack.cuts);

  it("of a grid run one line through all columns", () => {
    expect(new Set(cuts("grid").map(String)).size).toBe(1);
  });

  it("of an offset bond keep neighbouring level joints a third of the sheet apart", () => {
    const lines = cuts("offset").map(([line]) => line ?? Number.NaN);
    for (const [i, line] of lines.slice(1).entries()) {
      expect(Math.abs(line - (lines[i] ?? Number.NaN))).toBeGreaterThanOrEqual(3050 / 3 - 1e-6);
    }
  });
});
