/** P038 corrosion class, P039 metal against wood, P040 cut ends, P041 barriers in the cavity, P042 board thickness. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/project/schema/project.ts";
import { boardThickness } from "../../src/proof/board-thickness.ts";
import { cavityBarriers } from "../../src/proof/cavity-barriers.ts";
import { cutEnds } from "../../src/proof/cut-ends.ts";
import { screwCorrosion } from "../../src/proof/screw-corrosion.ts";
import { woodMetals } from "../../src/proof/wood-metals.ts";
import { boardsOf, proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";

type Metal = NonNullable<Project["stock"]["screws"][number]["metal"]>;

const screwed = (metal: Metal, exposure?: { seaKm: number; saltedRoadKm?: number }) =>
  proofFixture({
    project: ({ stock, site }) => {
      for (const screw of stock.screws) screw.metal = metal;
      if (exposure) site.exposure = { ...exposure, sulphurDioxideUgPerM3: 5, basis: "given" };
    },
  });

describe("P038 corrosion class", () => {
  it("cannot tell without the place, nor without the metal", () => {
    expect(screwCorrosion(screwed("A4"))).toMatchObject([
      { outcome: "cannot evaluate", where: { path: "/site/exposure" } },
    ]);
    const place = proofFixture({
      project: ({ site }) => {
        site.exposure = { seaKm: 50, sulphurDioxideUgPerM3: 5, basis: "given" };
      },
    });
    expect(screwCorrosion(place).map(({ outcome, where }) => [outcome, where.path])).toEqual(
      [0, 1, 2].map((index) => ["cannot evaluate", `/stock/screws/${index}/metal`]),
    );
  });

  it("inland and unwashed asks class III: A4 meets it, provisionally, and A2 does not", () => {
    const [a4] = screwCorrosion(screwed("A4", { seaKm: 50 }));
    expect(a4).toMatchObject({ outcome: "pass", provisional: true, demand: 3, limit: 3 });
    expect(screwCorrosion(screwed("A2", { seaKm: 50 }))[0]).toMatchObject({
      outcome: "fail",
      demand: 3,
      limit: 2,
    });
  });

  it("a salted road counts like the sea", () => {
    const [near] = screwCorrosion(screwed("A4", { seaKm: 22, saltedRoadKm: 0.04 }));
    expect(near?.working?.inputs[0]?.value).toBe(-3);
  });

  it("where two transcriptions of the table differ, both are told", () => {
    // 0.4 km: −7 by one, −15 by the other: III against V.
    const [disputed] = screwCorrosion(screwed("A4", { seaKm: 0.4 }));
    expect(disputed).toMatchObject({
      outcome: "attention",
      says: { values: { needs: "III", other: "V" } },
    });
    expect(screwCorrosion(screwed("A4", { seaKm: 0.1 }))[0]?.outcome).toBe("fail");
  });

  it("classes no other metal than stainless steel", () => {
    expect(screwCorrosion(screwed("hot-dip galvanized steel", { seaKm: 50 }))[0]?.outcome).toBe(
      "not applicable",
    );
  });
});

describe("P039 metal against wood", () => {
  const held = (species: string, metal: Metal, finish = "painted") =>
    woodMetals(
      proofFixture({
        project: (project) => {
          const boards = boardsOf(project);
          boards.species = species;
          boards.finish = finish;
          delete boards.lots;
          for (const screw of project.stock.screws) screw.metal = metal;
        },
      }),
    );

  it("cannot tell without the metal", () => {
    expect(woodMetals(proofFixture())[0]).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/stock/screws/1/metal" },
    });
  });

  it.each([
    ["western-redcedar", "A2", "pass"],
    ["western-redcedar", "coated steel", "pass"],
    ["western-redcedar", "hot-dip galvanized steel", "fail"],
    ["douglas-fir-coast", "hot-dip galvanized steel", "fail"],
    ["white-oak", "coated steel", "fail"],
    ["white-oak", "A2", "pass"],
    ["norway-spruce", "hot-dip galvanized steel", "pass"],
    ["norway-spruce", "zinc-plated steel", "fail"],
    ["norway-spruce", "aluminium", "fail"],
    ["norway-spruce", "brass", "fail"],
  ] as const)("%s held by %s: %s", (species, metal, outcome) => {
    const [finding, ...more] = held(species, metal);
    expect(finding).toMatchObject({ outcome, provisional: outcome === "pass" });
    expect(more).toEqual([]);
  });

  it("oiled boards are asked for A4 by one practice", () => {
    expect(held("norway-spruce", "A2", "oiled twice").map(({ outcome }) => outcome)).toEqual([
      "pass",
      "attention",
    ]);
    expect(held("norway-spruce", "A4", "oiled twice").map(({ outcome }) => outcome)).toEqual(["pass"]);
  });
});

describe("P040 cut ends and edges", () => {
  it("cannot tell until it is said, warns of bare ends, passes sealed ones", () => {
    expect(cutEnds(proofFixture()).map(({ outcome, where }) => [outcome, where.path])).toEqual([
      ["cannot evaluate", "/claddings/0/cutEnds"],
      ["cannot evaluate", "/claddings/1/cutEdges"],
    ]);
    const said = proofFixture({
      project: (project) => {
        boardsOf(project).cutEnds = "bare";
        sheetsOf(project).cutEdges = "as the data sheet";
      },
    });
    expect(cutEnds(said).map(({ outcome }) => outcome)).toEqual(["attention", "pass"]);
  });
});

describe("P041 barriers in the cavity", () => {
  it("clears nothing: within every stretch it reads not applicable", () => {
    const [boards, sheets, both] = cavityBarriers(proofFixture());
    expect(boards).toMatchObject({ outcome: "not applicable", where: { zone: "boards" } });
    expect(sheets?.outcome).toBe("not applicable");
    expect(both).toMatchObject({ outcome: "attention", says: { key: "proof.barrier.two-kinds" } });
  });

  /** Cavity depth and height of the appeal decision that the rule was read in: 19 + 19 mm, 4.2 m. */
  const decision = (
    cavity: number,
    height: number,
    jurisdiction: Project["site"]["jurisdiction"] = "canada",
  ) =>
    cavityBarriers(
      proofFixture({
        project: ({ site }) => Object.assign(site, { jurisdiction }),
        facade: ({ planes, faces: [face] }) => {
          planes[0]!.cavity = cavity;
          face!.zones[0]!.region = [
            [0, 0],
            [1220, 0],
            [1220, height],
            [0, height],
          ];
        },
      }),
    )[0];

  it("BC Building Code Appeal Board, decision 1985: 38 mm deep and 4.2 m high needed a stop", () => {
    expect(decision(38, 4200)).toMatchObject({ outcome: "attention", demand: 4200, limit: 3000, unit: "mm" });
  });

  it("crossed battens and rails count together, as in that decision", () => {
    const crossed = cavityBarriers(
      proofFixture({
        facade: ({ planes, faces: [face] }) => {
          Object.assign(planes[0]!, {
            backZ: 38,
            cavity: 19,
            layers: [
              { kind: "membrane", z: [0, 0] },
              { kind: "batten", z: [0, 19] },
              { kind: "rail", z: [19, 38] },
            ],
          });
          face!.zones[0]!.region = [
            [0, 0],
            [1220, 0],
            [1220, 4200],
            [0, 4200],
          ];
        },
      }),
    )[0];
    expect(crossed).toMatchObject({ outcome: "attention", demand: 4200, says: { values: { depth: 38 } } });
  });

  it("a single air space of 25 mm is exempt in Canada", () => {
    expect(decision(25, 4200)?.outcome).toBe("not applicable");
    expect(decision(26, 4200)?.outcome).toBe("attention");
  });

  it("the own place's rule governs; elsewhere the one most exceeded", () => {
    expect(decision(38, 7000, "united-states")).toMatchObject({ limit: 6096 });
    expect(decision(38, 7000, "sweden")).toMatchObject({ limit: 3000 });
  });
});

describe("P042 board thickness", () => {
  const thick = (thickness: number) =>
    boardThickness(
      proofFixture({
        project: (project) => {
          boardsOf(project).thickness = thickness;
        },
      }),
    )[0];

  it("20 mm falls short of one rule and not of another; 22 mm of neither", () => {
    expect(thick(20)).toMatchObject({ outcome: "attention", demand: 20, limit: 22 });
    expect(thick(20)?.says.values.rules).toHaveLength(1);
    expect(thick(16)?.says.values.rules).toHaveLength(2);
    expect(thick(22)).toMatchObject({ outcome: "pass", provisional: false });
  });
});
