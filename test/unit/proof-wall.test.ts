/** P005 ground, P006 snow, P011 hung load, P012 window frame, P016 handling, P017 weeks uncovered, P019 cautions. */
import { describe, expect, it } from "vitest";
import { groundClearance } from "../../src/proof/ground-clearance.ts";
import { handling } from "../../src/proof/handling.ts";
import { hungLoad } from "../../src/proof/hung-load.ts";
import { siteCautions } from "../../src/proof/site-cautions.ts";
import { snowBase } from "../../src/proof/snow-base.ts";
import { weeksUncovered } from "../../src/proof/weeks-uncovered.ts";
import { windowFrame } from "../../src/proof/window-frame.ts";
import { message } from "../../src/text/message.ts";
import { boardsOf, type MutableFacade, proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";

const groundAt = (...ground: [number, number][]) => ({
  facade: ({ faces: [face] }: MutableFacade) => {
    face!.ground = ground;
  },
});

describe("P005 ground clearance", () => {
  it("passes by the rule of the place", () => {
    const [boards, sheets] = groundClearance(proofFixture());
    expect(boards).toMatchObject({
      outcome: "pass",
      provisional: false,
      where: { zone: "boards", path: "/faces/0/ground", marks: ["F1"] },
      demand: 300,
      limit: 200,
      ratio: 200 / 300,
      source: { document: "Ontario Building Code, O. Reg. 332/12" },
    });
    expect(sheets?.outcome).toBe("pass");
  });

  it("finds the highest ground under a piece, between its corners and at a bend", () => {
    const [sloping] = groundClearance(proofFixture(groundAt([0, -300], [1220, -100])));
    expect(sloping).toMatchObject({ outcome: "fail", demand: 100 });
    const [mound] = groundClearance(proofFixture(groundAt([0, -300], [600, -150], [1220, -300])));
    expect(mound).toMatchObject({ outcome: "fail", demand: 150 });
    const [level] = groundClearance(proofFixture(groundAt([400, -250], [500, -250])));
    expect(level?.demand).toBe(250);
  });

  it("shows what other places ask of timber, not of sheets", () => {
    const findings = groundClearance(proofFixture(groundAt([0, -220], [3678, -220])));
    expect(findings.map(({ outcome, where, limit }) => [outcome, where.zone, limit])).toEqual([
      ["pass", "boards", 200],
      ["attention", "boards", 300],
      ["pass", "sheets", 200],
    ]);
    expect(findings[1]?.says.values.rules).toEqual([
      message("proof.rule-asks.mm", { rule: message("proof.rule.germany-ground"), value: 300 }),
    ]);
  });

  it("a rule that was read makes the pass firm; no rule cannot be told", () => {
    const inPlace = (jurisdiction: "france" | "other") =>
      groundClearance(proofFixture({ project: ({ site }) => Object.assign(site, { jurisdiction }) }));
    expect(inPlace("france")[0]).toMatchObject({ outcome: "pass", provisional: false });
    const [unknown, ...more] = inPlace("other");
    expect(unknown).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/site/jurisdiction" },
      says: { key: "proof.ground.no-rule", values: { height: 300 } },
      hint: message("proof.ask-local-code"),
    });
    expect(more).toEqual([]);
  });
});

describe("P006 snow over the base", () => {
  const withSnow = (most: number) =>
    snowBase(
      proofFixture({ project: ({ site }) => void site.climate?.snowDepthMm?.values.splice(2, 1, most) }),
    )[0];

  it("passes under the lowest edge and is to be looked at over it", () => {
    expect(withSnow(300)).toMatchObject({ outcome: "pass", demand: 300, limit: 300 });
    expect(withSnow(760)).toMatchObject({
      outcome: "attention",
      demand: 300,
      limit: 760,
      ratio: 760 / 300,
      says: message("proof.snow.over", { snow: 760, height: 300, month: message("proof.month.3") }),
    });
  });

  it("cannot tell without depths, and says so once", () => {
    expect(snowBase(proofFixture({ project: ({ site }) => void delete site.climate?.snowDepthMm }))).toEqual([
      {
        code: "P006",
        outcome: "cannot evaluate",
        provisional: false,
        where: { path: "/site/climate/snowDepthMm" },
        says: message("proof.snow.no-depth"),
        hint: message("proof.snow.enter-depth"),
        source: { kind: "common practice" },
      },
    ]);
  });
});

describe("P011 load hung through insulation", () => {
  const areaM2 = (1220 * (126 + 94 + 126)) / 1e6;
  const kgPerM2 = (3 * 1.1 + 3) / areaM2;
  const firm = (thickness: number, facade: (facade: MutableFacade) => void = () => undefined) =>
    hungLoad(
      proofFixture({
        project: (project) =>
          Object.assign(project.buildUps[0]!.layers[0]!, { bearing: "firm", material: "foam", thickness }),
        facade,
      }),
    )[0];

  it("cannot tell through soft insulation and shows the mass", () => {
    const findings = hungLoad(proofFixture());
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      outcome: "cannot evaluate",
      where: { zone: "boards", path: "/buildUps/0/layers" },
      unit: "kg/m²",
      hint: message("proof.hung.ask"),
      source: { document: "International Building Code, 2018", clause: "Table 2603.13.2" },
    });
    expect(findings[0]?.demand).toBeCloseTo(kgPerM2, 9);
    expect(findings[0]?.limit).toBeUndefined();
  });

  it("foam goes by the table: 300 mm screws, 610 mm furring, 14.9 kg/m² lie under 8 lb a screw: 4 in", () => {
    expect((kgPerM2 / 4.882) * (300 / 304.8) * 2).toBeLessThan(8);
    expect(firm(101)).toMatchObject({ outcome: "pass", provisional: true, demand: 101, limit: 4 * 25.4 });
    expect(firm(102)).toMatchObject({ outcome: "fail", hint: message("proof.hung.ask") });
  });

  it("a screw of 6 mm sags between what it would held at both ends, by 12, and at one, by 3", () => {
    const load = kgPerM2 * 9.80665 * 0.3 * 0.61;
    // The root of its thread is taken as seven tenths of it.
    const bar = 210_000 * ((Math.PI * 4.2 ** 4) / 64);
    expect(firm(50)?.hint?.values).toEqual({
      load: expect.closeTo(load, 9),
      least: expect.closeTo((load * 50 ** 3) / (12 * bar), 9),
      most: expect.closeTo((load * 50 ** 3) / (3 * bar), 9),
    });
  });

  it("firm insulation that is no foam is not judged by the table of foam", () => {
    const [fibre] = hungLoad(
      proofFixture({
        project: (project) =>
          Object.assign(project.buildUps[0]!.layers[0]!, { bearing: "firm", material: "wood fibre board" }),
      }),
    );
    expect(fibre).toMatchObject({ outcome: "cannot evaluate", says: { key: "proof.hung.soft" } });
  });

  it("outside the table it cannot tell", () => {
    const wide = firm(35, ({ faces: [face] }) => {
      for (const piece of face!.pieces) for (const point of piece.fixings) point.y *= 3;
    });
    expect(wide).toMatchObject({
      outcome: "cannot evaluate",
      unit: "kg/m²",
      says: { key: "proof.hung.outside" },
    });
  });
});

describe("P012 window frame", () => {
  const framed = (frameProjection: number) =>
    windowFrame(
      proofFixture({
        project: (project) => Object.assign(project.faces[0]!.openings[0]!, { frameProjection }),
      }),
    );

  it("passes within the cladding's thickness; its own projection goes before the face's", () => {
    expect(windowFrame(proofFixture())).toHaveLength(1);
    expect(framed(78)[0]).toMatchObject({ outcome: "pass", where: { opening: "W1", zone: "boards" } });
    expect(framed(98)[0]?.outcome).toBe("pass");
  });

  it("is to be looked at when buried or proud", () => {
    expect(framed(71)[0]).toMatchObject({
      outcome: "attention",
      demand: 71,
      limit: 78,
      ratio: 78 / 71,
      says: { key: "proof.frame.buried", values: { off: 7 } },
    });
    expect(framed(110)[0]).toMatchObject({
      outcome: "attention",
      limit: 98,
      says: { key: "proof.frame.proud", values: { off: 12 } },
      working: { substituted: "78 ≤ 110 > 98" },
    });
  });

  it("cannot tell without a projection", () => {
    const [frame] = windowFrame(
      proofFixture({ project: (project) => void delete project.faces[0]!.frameProjection }),
    );
    expect(frame).toMatchObject({
      outcome: "cannot evaluate",
      where: { opening: "W1", path: "/faces/0/openings/0/frameProjection" },
    });
  });
});

describe("P016 handling", () => {
  it("marks every piece that one person cannot handle", () => {
    const [boards, sheets] = handling(proofFixture());
    expect(boards).toMatchObject({
      outcome: "pass",
      provisional: true,
      demand: 1.1,
      where: { marks: ["F1"] },
    });
    expect(sheets).toMatchObject({
      outcome: "attention",
      demand: 41.7,
      limit: 25,
      ratio: 41.7 / 25,
      where: { marks: ["F11", "F12"] },
      hint: message("proof.handling.two"),
    });
  });
});

describe("P017 weeks uncovered", () => {
  it("passes and fails against the data sheet", () => {
    expect(weeksUncovered(proofFixture())[0]).toMatchObject({
      outcome: "pass",
      demand: 6,
      limit: 12,
      ratio: 0.5,
    });
    const late = proofFixture({ project: ({ site }) => Object.assign(site, { weeksUncovered: 13 }) });
    expect(weeksUncovered(late)[0]).toMatchObject({ outcome: "fail", demand: 13 });
  });

  it("cannot tell without a plan or without a limit, and says which", () => {
    const noPlan = proofFixture({ project: ({ site }) => void delete site.weeksUncovered });
    expect(weeksUncovered(noPlan)[0]).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/site/weeksUncovered" },
    });
    const noLimit = proofFixture({ project: ({ limits }) => void delete limits.membrane?.maxWeeksUncovered });
    expect(weeksUncovered(noLimit)[0]).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/limits/membrane/maxWeeksUncovered" },
    });
  });
});

describe("P019 site cautions", () => {
  const subjects = (changes?: Parameters<typeof proofFixture>[0]) =>
    siteCautions(proofFixture(changes)).map(({ says }) => says.key.replace("proof.caution.", ""));

  it("one a subject: dust, flame, oily rags", () => {
    expect(subjects()).toEqual(["flame", "oily-rags", "silica-dust"]);
    expect(siteCautions(proofFixture())[2]).toEqual({
      code: "P019",
      outcome: "attention",
      provisional: false,
      where: { path: "/claddings/1/material" },
      says: message("proof.caution.silica-dust", { height: 3000 }),
      hint: message("proof.caution.local-rules"),
      source: { kind: "common practice" },
    });
  });

  it("only where there is cause, in either language", () => {
    const plain = (project: Parameters<typeof boardsOf>[0]) => {
      boardsOf(project).finish = "brûlées puis huilées";
      sheetsOf(project).material = "aluminium";
    };
    expect(subjects({ project: plain })).toEqual(["flame", "oily-rags"]);
    expect(subjects({ project: (project) => void delete boardsOf(project).finish })).toEqual(["silica-dust"]);
  });

  it("heights from 3 m above the lowest ground", () => {
    expect(subjects(groundAt([0, -300], [3678, -600]))).toContain("heights");
    expect(subjects(groundAt([0, -300], [3678, -560]))).not.toContain("heights");
  });
});
