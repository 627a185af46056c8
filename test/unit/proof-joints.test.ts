/** P002 joint against the membrane, P003 open share, P013 sheet joint, P015 seasonal gap, P018 sliding holes. */
import { describe, expect, it } from "vitest";
import { jointWidth } from "../../src/proof/joint-width.ts";
import { openArea } from "../../src/proof/open-area.ts";
import { seasonalGap } from "../../src/proof/seasonal-gap.ts";
import { sheetJoint } from "../../src/proof/sheet-joint.ts";
import { slidingHoles } from "../../src/proof/sliding-holes.ts";
import { message } from "../../src/text/message.ts";
import { boardsOf, proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";

/** Round numbers instead of a climate: 1 % narrower when wet, 2 % wider when dry. */
const season = {
  wettestMm: -0.01,
  driestMm: 0.02,
  fixingPercent: 15,
  wettestPercent: 18,
  driestPercent: 11,
  wettestMonth: 11,
  driestMonth: 5,
  wood: "test",
  figures: [],
  basis: "given",
} as const;

function seasonally(gaps: readonly [number, number], change = {}) {
  const context = proofFixture({
    facade: ({ faces: [face] }) => {
      gaps.forEach((width, index) => {
        face!.joints[index]!.width = width;
      });
    },
  });
  const { boards } = context.demands;
  const seasonal = { ...season, ...change };
  return { ...context, demands: { ...context.demands, boards: { boards: { ...boards.boards!, seasonal } } } };
}

describe("P002 joint against the membrane", () => {
  it("takes the widest gap of the driest month, by the widest board", () => {
    const [boards, sheets] = jointWidth(seasonally([9, 10]));
    expect(boards).toMatchObject({ outcome: "pass", provisional: false, limit: 30, unit: "mm" });
    expect(boards?.demand).toBeCloseTo(10 + 0.02 * 126, 9);
    expect(boards?.working?.substituted).toBe("10 + 2.5 = 12.5 ≤ 30");
    expect(sheets).toMatchObject({ outcome: "pass", demand: 8, ratio: 8 / 30 });
  });

  it("fails when only the season opens it too far", () => {
    const [boards] = jointWidth(seasonally([9, 28]));
    expect(boards).toMatchObject({ outcome: "fail", hint: message("proof.joint.narrow") });
    expect(jointWidth(seasonally([9, 28], { driestMm: 0 }))[0]?.outcome).toBe("pass");
  });

  it("cannot tell without the membrane's limit", () => {
    const [boards] = jointWidth(proofFixture({ project: (project) => void delete project.limits.membrane }));
    expect(boards).toEqual({
      code: "P002",
      outcome: "cannot evaluate",
      provisional: false,
      where: { face: "front", zone: "boards", path: "/limits/membrane/maxGap" },
      says: message("proof.joint.no-limit"),
      hint: message("proof.enter-data-sheet"),
      source: { kind: "your data sheet" },
    });
  });

  it("fails on a membrane that light destroys, and cannot tell without a membrane", () => {
    const [frail] = jointWidth(
      proofFixture({
        project: (project) => Object.assign(project.buildUps[0]!.layers[1]!, { lightStable: false }),
      }),
    );
    expect(frail).toMatchObject({ outcome: "fail", where: { path: "/buildUps/0/layers/1/lightStable" } });
    const [none] = jointWidth(
      proofFixture({ project: (project) => void project.buildUps[0]!.layers.splice(1, 1) }),
    );
    expect(none).toMatchObject({ outcome: "cannot evaluate", where: { path: "/buildUps/0/layers" } });
  });
});

describe("P003 open share", () => {
  it("is the joints' area over that of joints and boards", () => {
    const [boards] = openArea(proofFixture());
    // Two 9 mm gaps beside boards of 126 + 94 + 126 mm.
    expect(boards?.demand).toBeCloseTo((100 * 18) / (18 + 346), 9);
    expect(boards).toMatchObject({ outcome: "pass", limit: 20, unit: "%" });
  });

  it("fails over the limit; strips beside openings do not count", () => {
    const [over] = openArea(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.joints[0]!.region = face!.pieces[0]!.outline;
        },
      }),
    );
    expect(over?.outcome).toBe("fail");
    const [edge] = openArea(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.joints[0]!.region = face!.pieces[0]!.outline;
          face!.joints[0]!.kind = "edge";
        },
      }),
    );
    expect(edge?.demand).toBeCloseTo((100 * 9) / (9 + 346), 9);
  });

  it("cannot tell without the membrane's limit", () => {
    const [boards] = openArea(proofFixture({ project: (project) => void delete project.limits.membrane }));
    expect(boards).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/limits/membrane/maxOpenPercent" },
    });
  });
});

describe("P013 sheet joint", () => {
  const withJoint = (width: number) =>
    sheetJoint(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.joints[2]!.width = width;
        },
      }),
    )[0];
  // α 1e-5, 1220 mm, 10 °C to 35 + 0.052 × 800 = 76.6 °C: 0.8125 mm; moisture 1 mm/m: 1.22 mm.
  const heat = 0.8125;
  const arithmetic = heat + 1.22 + 1 + 2 + 2;

  it("passes when everything added fits; the pass is provisional on tolerances and sun", () => {
    const enough = withJoint(7.1);
    expect(enough).toMatchObject({ outcome: "pass", provisional: true, demand: 7.1, unit: "mm" });
    expect(enough?.limit).toBeCloseTo(arithmetic, 3);
    expect(enough?.says.values.root).toBeCloseTo(heat + 1.22 + Math.sqrt(5) + 2, 3);
  });

  it("is to be looked at between the sums", () => {
    expect(withJoint(7)).toMatchObject({ outcome: "attention", hint: message("proof.sheet-joint.hint") });
  });

  it("fails under the barest sum or the data sheet's least", () => {
    expect(withJoint(5.9)).toMatchObject({ outcome: "fail", limit: 6 });
    const long = sheetJoint(
      proofFixture({
        project: (project) => Object.assign(sheetsOf(project).dataSheet, { minJoint: 1 }),
        facade: ({ faces: [face] }) => {
          face!.joints[2]!.width = 5.4;
        },
      }),
    )[0];
    expect(long).toMatchObject({ outcome: "fail" });
    expect(long?.limit).toBeCloseTo(1.22 + Math.sqrt(5) + 2, 9);
  });

  it("takes the direction in which the sheets are long", () => {
    const [stacked] = sheetJoint(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.joints[2]!.along = "x";
        },
      }),
    );
    expect(stacked?.says.values.length).toBe(2440);
  });

  it("cannot tell without temperatures", () => {
    const [unknown] = sheetJoint(
      proofFixture({ project: (project) => void delete project.site.climate?.extremeTempC }),
    );
    expect(unknown).toMatchObject({
      outcome: "cannot evaluate",
      says: message("proof.sheet-joint.no-temperatures"),
    });
  });
});

describe("P015 seasonal gap", () => {
  it("passes inside the band all year", () => {
    const [boards] = seasonalGap(seasonally([9, 9]));
    expect(boards).toMatchObject({ outcome: "pass", provisional: false, limit: 12, unit: "mm" });
    expect(boards?.says.values.wettest).toBeCloseTo(9 - 1.26, 9);
    expect(boards?.says.values.driest).toBeCloseTo(9 + 2.52, 9);
    expect(boards?.working?.substituted).toBe("9 − 1.26 = 7.7; 9 + 2.52 = 11.5");
  });

  it("is to be looked at where the narrowest or the widest gap leaves the band, and says what would stay", () => {
    const [narrow] = seasonalGap(seasonally([7, 9]));
    expect(narrow).toMatchObject({ outcome: "attention", limit: 6 });
    expect(narrow?.demand).toBeCloseTo(5.74, 9);
    expect(narrow?.hint?.values.from).toBeCloseTo(7.26, 9);
    expect(narrow?.hint?.values.to).toBeCloseTo(9.48, 9);
    const [wide] = seasonalGap(seasonally([9, 10]));
    expect(wide).toMatchObject({ outcome: "attention", limit: 12 });
    expect(wide?.demand).toBeCloseTo(12.52, 9);
  });

  it("fails where boards meet", () => {
    expect(seasonalGap(seasonally([9, 9], { wettestMm: -0.08 }))[0]?.outcome).toBe("fail");
  });

  it("a remembered climate makes the pass provisional", () => {
    expect(seasonalGap(seasonally([9, 9], { basis: "memory" }))[0]?.provisional).toBe(true);
  });

  it("names everything that is missing", () => {
    const [boards] = seasonalGap(
      proofFixture({
        project: (project) => {
          delete project.site.climate?.meanRelativeHumidityPercent;
          delete boardsOf(project).moisturePercent;
        },
      }),
    );
    expect(boards).toMatchObject({
      outcome: "cannot evaluate",
      says: message("proof.season.lacks", {
        paths: ["/site/climate/meanRelativeHumidityPercent", "/claddings/0/moisturePercent"],
      }),
    });
  });
});

describe("P018 sliding holes", () => {
  const reach = Math.hypot(585, 1150);

  it("passes a hole that leaves room at the farthest point", () => {
    const [holes] = slidingHoles(proofFixture());
    expect(holes).toMatchObject({ outcome: "pass", provisional: true, demand: 9.5, unit: "mm" });
    // Movement each way: 1e-5 × 66.6 K × 1000 + 1 = 1.666 mm per m.
    expect(holes?.limit).toBeCloseTo(4.8 + (2 * 1.666 * reach) / 1000, 6);
  });

  it("fails a hole too small, near as well as far", () => {
    const [holes] = slidingHoles(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.pieces[4]!.fixings[6]!.hole = 5;
        },
      }),
    );
    expect(holes).toMatchObject({ outcome: "fail", demand: 5, where: { marks: ["F12"] } });
  });

  it("names the thinnest screw of stock that serves, though another was chosen", () => {
    const [holes, ...rest] = slidingHoles(
      proofFixture({
        project: ({ stock }) => {
          const [screw] = stock.screws;
          if (!screw) throw new Error("no screw");
          stock.screws.push({ ...screw, id: "sheet-thin", diameter: 4, headDiameter: 14 });
          stock.screws.push({ ...screw, id: "sheet-small-head", diameter: 3, headDiameter: 8 });
        },
      }),
    );
    // 4 + 2 × 1.666 × 1.290 m = 8.30 mm, drilled 8.5; the head reaches over it from 2 × 8.5 − 4 = 13 mm.
    expect(holes?.says.values.smallest).toEqual(
      message("proof.holes.smallest", { screw: "sheet-thin", diameter: 4, length: 38, drilled: 8.5 }),
    );
    expect(rest).toEqual([]);
  });

  it.each([
    [
      "a head that leaves the hole uncovered",
      { headDiameter: 14.1 },
      "uncovered",
      { demand: 14.1, limit: 14.2 },
    ],
    ["a screw too short to bite", { length: 30 }, "short", { demand: 30, limit: 34 }],
    ["a screw that comes out behind", { length: 80 }, "long", { demand: 80, limit: 47 }],
  ])("notes %s, and says what to buy where stock has none", (_, change, key, compared) => {
    const [, unserved] = slidingHoles(
      proofFixture({
        project: ({ stock }) => {
          const screw = stock.screws.find(({ use }) => use === "sheet");
          if (screw) Object.assign(screw, change);
        },
      }),
    );
    expect(unserved).toMatchObject({
      outcome: "attention",
      where: { path: "/claddings/1/screw" },
      says: { key: `proof.holes.${key}` },
      hint: { key: "proof.holes.buy" },
      ...compared,
    });
  });

  it("fails sheets without a fixed point", () => {
    const findings = slidingHoles(
      proofFixture({
        facade: ({ faces: [face] }) => {
          for (const point of face!.pieces[3]!.fixings) point.kind = "sliding";
        },
      }),
    );
    expect(findings[0]).toEqual({
      code: "P018",
      outcome: "fail",
      provisional: false,
      where: { face: "front", zone: "sheets", marks: ["F11"] },
      says: message("proof.holes.no-fixed-point", { count: 1 }),
      hint: message("proof.holes.fix-one"),
      source: { kind: "common practice" },
    });
  });

  it("cannot tell without temperatures", () => {
    const [holes] = slidingHoles(
      proofFixture({ project: (project) => void delete project.site.climate?.extremeTempC }),
    );
    expect(holes).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/site/climate/extremeTempC" },
    });
  });
});
