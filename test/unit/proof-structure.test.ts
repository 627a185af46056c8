/** The rules of wind on a small wall, each against numbers worked out here by hand. */
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/findings/finding.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { battenScrews } from "../../src/proof/batten-screws.ts";
import { claddingScrews } from "../../src/proof/cladding-screws.ts";
import type { ProofContext, ZoneView } from "../../src/proof/context.ts";
import { skinSag } from "../../src/proof/skin-sag.ts";
import { skinStrength } from "../../src/proof/skin-strength.ts";
import { structureCautions } from "../../src/proof/structure-cautions.ts";
import { studAim } from "../../src/proof/stud-aim.ts";
import { netWind, windBands } from "../../src/proof/wind/bands.ts";
import { membersOf, screwShares } from "../../src/proof/wind/members.ts";
import { windStudies } from "../../src/proof/wind/study.ts";
import { windInputs } from "../../src/proof/wind-inputs.ts";
import { windOnSkin } from "../../src/proof/wind-on-skin.ts";
import { proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";
import { WINDS } from "../helpers/winds.ts";

type Change = (project: Project) => void;

/** Abbotsford: 0.44 kPa, open, 6 m, shut in a storm. */
const PRESSURE = 440 * 0.6 ** 0.2;
const PULL_END = PRESSURE * (2.1 + 0.6);

function wall(change: Change = () => undefined): ProofContext {
  return proofFixture({
    project: (project) => {
      Object.assign(project.site, structuredClone(WINDS["canada-nbc-2020"]));
      Object.assign(project.site.wind ?? {}, { enclosure: "enclosed" });
      Object.assign(sheetsOf(project).dataSheet, {
        modulusMPa: 7000,
        bendingStrengthMPa: 15,
        pullThroughN: 900,
        strengthLevel: "design",
      });
      for (const screw of project.stock.screws)
        screw.declared = {
          basis: "given",
          level: "design",
          withdrawalNPerMm: 40,
          shearN: 1000,
          pullThroughN: 800,
        };
      project.limits.sagSpanOver = { sheets: { value: 150, basis: "given" } };
      change(project);
    },
  });
}

const ofZone = (findings: readonly Finding[], zone: string): Finding[] =>
  findings.filter(({ where }) => where.zone === zone);

/** Middle line of a sheet on three, 585 mm apart, 25 mm from its edges: R = 1.25 w L − 1.5 w a²/L by the theorem of three moments. */
const MIDDLE = 1.25 * 585 - (1.5 * 25 ** 2) / 585;

describe("strips of a wall", () => {
  it("stand at both ends, the field between, and leave nothing out", () => {
    const [study] = windStudies(wall());
    if (!study) throw new Error("no wind");
    expect(study.bands.map(({ strip, x }) => [strip.id, ...x])).toEqual([
      ["end", 0, 1000],
      ["field", 1000, 2678],
      ["end", 2678, 3678],
    ]);
  });

  it("a wall shorter than its end strips is end all over; a soffit too", () => {
    const [study] = windStudies(wall());
    if (!study) throw new Error("no wind");
    const short = {
      outline: [
        [0, 0],
        [1500, 0],
        [1500, 900],
        [0, 900],
      ] as [number, number][],
    };
    expect(windBands({ ...short, azimuthDeg: 10 }, study.wind).map(({ strip }) => strip.id)).toEqual(["end"]);
    expect(windBands({ ...study.view.face, azimuthDeg: undefined } as never, study.wind)).toHaveLength(1);
  });

  it("what reaches into an end strip takes its pull, and both signs are there", () => {
    const [study] = windStudies(wall());
    if (!study) throw new Error("no wind");
    const at = (from: number, to: number, areaM2 = 0) =>
      netWind(study.wind, study.bands, { x: [from, to], areaM2 });
    expect(at(900, 1300).pullPa).toBeCloseTo(PULL_END, 6);
    expect(at(1100, 1300).pullPa).toBeCloseTo(PRESSURE * (1.8 + 0.6), 6);
    expect(at(1100, 1300).pushPa).toBeCloseTo(PRESSURE * (1.8 + 0.9), 6);
    expect(at(900, 1300, 50).pullPa).toBeCloseTo(PRESSURE * (1.5 + 0.6), 6);
  });

  it("are told zone by zone, with no relief for open joints", () => {
    const [boards] = ofZone(windOnSkin(wall()), "boards");
    expect(boards).toMatchObject({ code: "P045", outcome: "pass", unit: "Pa" });
    expect(boards?.demand).toBeCloseTo(PULL_END, 6);
  });

  it("relief is attention, quotes what was measured, and changes no screw", () => {
    const relieved = wall((project) => {
      Object.assign(project.site.wind ?? {}, {
        reliefPercent: { value: 30, basis: "given", source: "test report" },
      });
    });
    const told = windOnSkin(relieved).filter(({ outcome }) => outcome === "attention");
    expect(told.map(({ hint }) => hint?.key)).toEqual(Array(2).fill("structure.wind.relief-evidence"));
    const stress = (context: ProofContext) => ofZone(skinStrength(context), "sheets")[0]?.demand ?? 0;
    expect(stress(relieved)).toBeCloseTo(0.7 * stress(wall()), 9);
    expect(claddingScrews(relieved)).toEqual(claddingScrews(wall()));
  });
});

describe("without wind", () => {
  it("nothing is judged, and P054 says what is missing", () => {
    const context = proofFixture();
    expect(windInputs(context)).toMatchObject([
      { code: "P054", outcome: "cannot evaluate", where: { path: "/site/wind" } },
    ]);
    expect([...skinStrength(context), ...claddingScrews(context), ...structureCautions(context)]).toEqual([]);
  });

  it("with all of it P054 is silent", () => {
    expect(windInputs(wall())).toEqual([]);
  });
});

describe("sheets", () => {
  it("bend between their battens: stress and sag of two spans", () => {
    const [stress] = ofZone(skinStrength(wall()), "sheets");
    const moment = (585 ** 2 / 8 - 25 ** 2 / 4) * (PULL_END / 1e6) * 1.4;
    expect(stress).toMatchObject({ code: "P046", outcome: "pass", limit: 15, unit: "MPa" });
    expect(stress?.demand).toBeCloseTo((6 * moment) / 8 ** 2, 6);
    const [sag] = ofZone(skinSag(wall()), "sheets");
    expect(sag).toMatchObject({ code: "P047", limit: 585 / 150 });
    // Two spans sag 1/185 w L⁴/EI; the arms take a little off.
    const freely = ((PULL_END / 1e6) * 0.75 * 585 ** 4) / 185 / ((7000 * 8 ** 3) / 12);
    expect(Math.abs((sag?.demand ?? 0) / freely - 1)).toBeLessThan(0.02);
  });

  it("too weak fails and names the sheet", () => {
    const [weak] = ofZone(
      skinStrength(
        wall((project) => {
          sheetsOf(project).dataSheet.bendingStrengthMPa = 4;
        }),
      ),
      "sheets",
    );
    expect(weak).toMatchObject({ outcome: "fail", where: { marks: [expect.stringMatching(/^F1[12]$/)] } });
  });

  it.each([
    ["bendingStrengthMPa", "sheet-strength"],
    ["modulusMPa", "sheet-strength"],
    ["strengthLevel", "strength-level"],
  ] as const)("without %s nothing passes", (field, key) => {
    const found = ofZone(
      skinStrength(wall((project) => void delete sheetsOf(project).dataSheet[field])),
      "sheets",
    );
    expect(found).toMatchObject([
      {
        outcome: "cannot evaluate",
        says: { key: `structure.lack.${key}` },
        where: { path: "/claddings/1/dataSheet" },
      },
    ]);
  });

  it("characteristic strengths are divided by the factor of the data sheet", () => {
    const [found] = ofZone(
      skinStrength(
        wall((project) => {
          Object.assign(sheetsOf(project).dataSheet, {
            strengthLevel: "characteristic",
            materialFactor: 1.5,
          });
        }),
      ),
      "sheets",
    );
    expect(found?.limit).toBe(10);
  });
});

describe("screws of sheets", () => {
  it("the worst of the middle line holds its reaction over its rows", () => {
    const { zones } = wall();
    const sheets = zones.find(({ where }) => where.zone === "sheets") as ZoneView;
    const [first] = membersOf(sheets).skins;
    if (!first) throw new Error("no sheet");
    const areas = screwShares(first).map(({ areaMm2 }) => areaMm2);
    // Rows at 70, 650, 1220, 1790, 2370: the second holds from 360 to 935.
    expect(Math.max(...areas)).toBeCloseTo(MIDDLE * 575, 6);
    expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(1220 * 2440, 6);
  });

  it("the fixed point carries the weight as well", () => {
    const [found] = ofZone(claddingScrews(wall()), "sheets");
    const pull = (PULL_END / 1e6) * 1.4 * MIDDLE * 570;
    const weight = 41.7 * 9.80665 * 1.25;
    expect(found).toMatchObject({ code: "P050", unit: "1", where: { at: [expect.any(Number), 1220] } });
    // Canada adds the shares: 900 N through the sheet, 29 mm of thread hold more, 1000 N across.
    expect(found?.ratio).toBeCloseTo(pull / 900 + weight / 1000, 6);
  });

  it("a pull-through that is not given is not a pass", () => {
    const found = ofZone(
      claddingScrews(wall((project) => void delete sheetsOf(project).dataSheet.pullThroughN)),
      "sheets",
    );
    expect(found[0]).toMatchObject({
      outcome: "cannot evaluate",
      says: { key: "structure.lack.sheet-pull-through" },
      where: { path: "/claddings/1/dataSheet" },
    });
  });
});

describe("battens", () => {
  it("carry what ends on them side by side: the joint’s batten two edges, the middle one its line", () => {
    const { zones } = wall();
    const sheets = zones.find(({ where }) => where.zone === "sheets") as ZoneView;
    const { carriers } = membersOf(sheets);
    const middle = carriers.find(({ piece }) => piece.mark === "FS1");
    // Both sheets of the fixture name the same battens.
    expect(middle?.gathers).toBeCloseTo(2 * MIDDLE, 6);
  });

  it("through soft insulation their weight is left to the rule of hanging", () => {
    const judged = battenScrews(
      proofFixture({
        project: (project) => Object.assign(project, wall().project),
        facade: ({ faces: [face] }) => {
          for (const piece of face?.pieces ?? [])
            for (const point of piece.fixings)
              if (piece.kind === "batten") point.through = [{ what: "insulation", thickness: 51 }];
        },
      }),
    );
    for (const { says } of judged) expect(says.values).toMatchObject({ shear: 0 });
    expect(judged.length).toBeGreaterThan(0);
  });
});

it("a screw 140 mm long, 6 mm thick, 10 mm off the middle of a stud of 38 mm: atan(3/140) askew is too little by hand", () => {
  const context = proofFixture({
    facade: ({ faces: [face] }) => {
      if (!face) return;
      face.solids = [
        {
          id: "stud",
          kind: "stud",
          z: [-140, 0],
          region: [
            [3, 0],
            [41, 0],
            [41, 2440],
            [3, 2440],
          ],
        },
      ];
      face.pieces = face.pieces.filter(({ mark }) => mark === "FB0");
    },
  });
  const [found] = studAim(context);
  expect(found).toMatchObject({ code: "P052", outcome: "attention" });
  expect(found?.demand).toBeCloseTo((Math.atan((19 - 10 - 6) / 140) * 180) / Math.PI, 9);
});

describe("closer rows of a sheet that gives", () => {
  /** The fixture's sheet holds 900 N through; so weak that only closer rows help, and without weight. */
  const weak = (pullThroughN: number) =>
    proofFixture({
      project: (project) => {
        Object.assign(project, wall().project);
        Object.assign(sheetsOf(project).dataSheet, { pullThroughN, fixingSpacing: [200, 600] });
      },
      facade: ({ faces: [face] }) => {
        for (const piece of face?.pieces ?? []) if (piece.kind === "sheet") piece.massKg = 0;
      },
    });

  it("are the fewest that hold, told with before and after, and come as an edit", () => {
    const [found] = ofZone(claddingScrews(weak(400)), "sheets");
    // 400 N over 1.4 · PULL_END · MIDDLE: the most height that a screw of the middle line may hold.
    const most = 400 / ((PULL_END / 1e6) * 1.4) / MIDDLE;
    const inset = 70;
    const count = [5, 6, 7, 8, 9, 10].find((rows) => (2440 - 2 * inset) / (rows - 1) <= most) ?? 0;
    const spacing = Math.ceil((2440 - 2 * inset) / (count - 1));
    expect(count).toBeGreaterThan(5);
    expect(found).toMatchObject({
      outcome: "fail",
      hint: { key: "structure.screw.rows", values: { before: 5, after: count, screws: 3 * count, spacing } },
      edit: [{ op: "replace", path: "/claddings/1/dataSheet/fixingSpacing/1", value: spacing }],
    });
  });

  it("are not offered where the band of the data sheet ends first", () => {
    const [found] = ofZone(claddingScrews(weak(150)), "sheets");
    expect(found).toMatchObject({ outcome: "fail", hint: { key: "structure.screw.more" } });
    expect(found?.edit).toBeUndefined();
  });
});

it("a batten that gives is told how many screws would hold it: the least count that the tables of beams allow", () => {
  const judged = (pullThroughN: number) =>
    ofZone(
      battenScrews(
        proofFixture({
          project: (project) => {
            Object.assign(project, wall().project);
            for (const screw of project.stock.screws)
              if (screw.declared) Object.assign(screw.declared, { pullThroughN, withdrawalNPerMm: 400 });
          },
          facade: ({ faces: [face] }) => {
            for (const piece of face?.pieces ?? []) {
              piece.massKg = 0;
              // Screws at both ends of a batten of 2400 mm.
              if (piece.kind === "batten") {
                piece.outline = [
                  [piece.outline[0]?.[0] ?? 0, 0],
                  [piece.outline[1]?.[0] ?? 0, 0],
                  [piece.outline[1]?.[0] ?? 0, 2400],
                  [piece.outline[0]?.[0] ?? 0, 2400],
                ];
                piece.fixings.forEach((fixing, i) => {
                  fixing.y = i * 2400;
                });
              }
            }
          },
        }),
      ),
      "sheets",
    )[0];
  // The battens of the sheets lie in the field.
  const load = ((PRESSURE * (1.8 + 0.6)) / 1e6) * 1.4 * 2 * MIDDLE;
  // Largest reactions of equal spans: 10/8, 11/10, 32/28, 43/38 of w L.
  const largest = [10 / 8, 11 / 10, 32 / 28, 43 / 38].map((share, i) => (share * load * 2400) / (i + 2));
  const found = judged((largest[2] ?? 0) * 1.001);
  expect(found).toMatchObject({
    outcome: "fail",
    hint: { key: "structure.screw.along", values: { before: 2, after: 5, spacing: 600 } },
  });
  expect(judged((largest[2] ?? 0) * 0.999)?.hint?.values).toMatchObject({ after: 6 });
});

it("where the least pressure of ASCE 7 governs, which is from memory, what passes is provisional", () => {
  const breeze = (speed: number) =>
    wall((project) => {
      Object.assign(project.site, structuredClone(WINDS["usa-asce-7-16"]));
      Object.assign(project.site.wind?.speedMPerS ?? {}, { value: speed });
    });
  const stress = (speed: number) => ofZone(skinStrength(breeze(speed)), "sheets")[0];
  // 16 psf either way: half the speed would give a quarter of the pressure.
  expect(stress(20)).toMatchObject({ outcome: "pass", provisional: true });
  expect(stress(20)?.demand).toBeCloseTo(stress(15)?.demand ?? 0, 12);
  expect(stress(51.4)).toMatchObject({ outcome: "pass", provisional: false });
});
