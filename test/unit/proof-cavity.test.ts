/** P001 cavity depth and P014 cavity ends. */
import { describe, expect, it } from "vitest";
import { cavityDepth } from "../../src/proof/cavity-depth.ts";
import { cavityEnds } from "../../src/proof/cavity-ends.ts";
import { message } from "../../src/text/message.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";

describe("P001 cavity depth", () => {
  it("passes against the project's limit and names every rule set that asks more", () => {
    const [boards, sheets, ...disagreeing] = cavityDepth(proofFixture());
    expect(boards).toEqual({
      code: "P001",
      outcome: "pass",
      provisional: false,
      where: { face: "front", zone: "boards", path: "/limits/cavityMin" },
      says: message("proof.cavity.enough", { depth: 27, least: 10 }),
      demand: 27,
      limit: 10,
      unit: "mm",
      ratio: 10 / 27,
      working: {
        formula: "c ≥ c_min",
        inputs: [
          { symbol: "c", meaning: message("proof.input.cavity"), value: 27, unit: "mm", basis: "derived" },
          {
            symbol: "c_min",
            meaning: message("proof.input.least-cavity"),
            value: 10,
            unit: "mm",
            basis: "given",
          },
        ],
        substituted: "27 ≥ 10",
      },
      source: { kind: "your project" },
    });
    expect(sheets?.outcome).toBe("pass");
    expect(disagreeing.map(({ outcome, limit, ratio }) => [outcome, limit, ratio])).toEqual([
      ["attention", 50, 50 / 27],
      ["attention", 50, 50 / 39],
    ]);
    expect(disagreeing[0]?.says).toEqual(
      message("proof.cavity.rules", {
        depth: 27,
        zones: 1,
        rules: [
          ["switzerland-practice", 40],
          ["united-kingdom-warranty-body", 50],
          ["united-kingdom-fibre-cement", 30],
        ].map(([rule, value]) =>
          message("proof.rule-asks.mm", { rule: message(`proof.rule.${rule}`), value: value ?? 0 }),
        ),
      }),
    );
  });

  it("fails under the project's limit", () => {
    const [boards] = cavityDepth(
      proofFixture({ project: (project) => Object.assign(project.limits.cavityMin, { value: 30 }) }),
    );
    expect(boards).toMatchObject({ outcome: "fail", demand: 27, limit: 30, ratio: 30 / 27 });
  });

  it("a limit from memory makes the pass provisional", () => {
    const [boards] = cavityDepth(
      proofFixture({ project: (project) => Object.assign(project.limits.cavityMin, { basis: "memory" }) }),
    );
    expect(boards).toMatchObject({ outcome: "pass", provisional: true });
  });

  it("a rule of the own jurisdiction comes first, though another asks more", () => {
    const findings = cavityDepth(
      proofFixture({ project: (project) => Object.assign(project.site, { jurisdiction: "switzerland" }) }),
    );
    expect(findings.find(({ outcome }) => outcome === "attention")).toMatchObject({ demand: 27, limit: 40 });
  });

  it("one line holds for zones of one cladding and depth", () => {
    const findings = cavityDepth(
      proofFixture({
        facade: ({ planes, faces: [face] }) => {
          for (const plane of planes) plane.cavity = 60;
          planes[0]!.cavity = 27;
          face!.zones[1]!.cladding = "boards";
          planes[1]!.cavity = 27;
        },
      }),
    );
    expect(findings.filter(({ outcome }) => outcome === "attention")).toHaveLength(1);
  });

  it("says nothing of a zone whose build-up was not set out", () => {
    expect(cavityDepth(proofFixture({ facade: (facade) => void facade.planes.splice(0) }))).toEqual([]);
  });
});

describe("P014 cavity ends", () => {
  it("passes where every end is closed and the least vent meets every rule", () => {
    const [boards] = cavityEnds(proofFixture());
    expect(boards).toMatchObject({
      outcome: "pass",
      demand: 178,
      limit: 150,
      unit: "cm²/m",
      ratio: 150 / 178,
    });
  });

  it.each([
    [50, []],
    [
      49,
      [message("proof.rule-asks.cm2PerM", { rule: message("proof.rule.germany-din-18516-1"), value: 50 })],
    ],
  ])("%d cm²/m: the rules disagree", (net, german) => {
    const [boards] = cavityEnds(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.vents[1]!.netCm2PerM = net;
        },
      }),
    );
    expect(boards).toMatchObject({
      outcome: "attention",
      demand: net,
      limit: 150,
      where: { at: [610, 2440] },
    });
    const rules = boards?.says.values.rules as unknown[];
    expect(rules).toHaveLength(3 + german.length);
    expect(rules).toEqual(expect.arrayContaining(german));
  });

  it("names the opening whose vent lets least through", () => {
    const [boards] = cavityEnds(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.vents[2]!.netCm2PerM = 40;
        },
      }),
    );
    expect(boards?.says.values.end).toEqual(message("proof.vent-at.under-opening", { opening: "W1" }));
  });

  it("fails where an end has no vent, none with a closure, or none with air, and names them all", () => {
    const [boards] = cavityEnds(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.vents[0]!.closure = "";
          face!.vents[1]!.netCm2PerM = 0;
          face!.vents.splice(2, 1);
        },
      }),
    );
    expect(boards).toEqual({
      code: "P014",
      outcome: "fail",
      provisional: false,
      where: { face: "front", zone: "boards" },
      says: message("proof.vents.open-end", {
        ends: [
          message("proof.vent-at.base", { opening: "" }),
          message("proof.vent-at.top", { opening: "" }),
          message("proof.vent-at.under-opening", { opening: "W1" }),
        ],
      }),
      hint: message("proof.vents.close"),
      source: { kind: "common practice" },
    });
  });

  it("an opening down to the base has no end under it", () => {
    const findings = cavityEnds(
      proofFixture({
        project: (project) => Object.assign(project.faces[0]!.openings[0]!, { toBase: true }),
        facade: ({ faces: [face] }) => void face!.vents.splice(2, 1),
      }),
    );
    expect(findings.map(({ outcome }) => outcome)).toEqual(["pass", "pass"]);
  });
});
