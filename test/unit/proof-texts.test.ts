/** Every message that proof can send stands in the catalogue, in both languages, with the values that it needs. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import general from "../../data/text/proof.json" with { type: "json" };
import air from "../../data/text/proof-air.json" with { type: "json" };
import structure from "../../data/text/structure.json" with { type: "json" };
import { demandsOf } from "../../src/codes/demands.ts";
import { splashRules } from "../../src/codes/splash.ts";
import type { Finding } from "../../src/findings/finding.ts";
import { STRUCTURE_CODES } from "../../src/project/schema/wind.ts";
import { PROOF_RULES, prove } from "../../src/proof/index.ts";
import { LANGUAGES } from "../../src/text/catalogue.ts";
import { say } from "../../src/text/say.ts";
import { proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";
import { WINDS } from "../helpers/winds.ts";

const catalogue = { ...general, ...air };

function sentences(findings: readonly Finding[]): string[] {
  const messages = findings.flatMap(({ says, hint, working }) => [
    says,
    ...(hint ? [hint] : []),
    ...(working?.inputs.map(({ meaning }) => meaning) ?? []),
  ]);
  return LANGUAGES.flatMap((language) =>
    (["mm", "feet-inch"] as const).flatMap((units) =>
      messages.map((one) => say(one, { language, units, denominator: 16 })),
    ),
  );
}

/** A stud that a batten’s screw barely meets. */
const BESIDE: [number, number][] = [
  [20, 0],
  [58, 0],
  [58, 2440],
  [20, 2440],
];

const SPLASHES = (["gravel", "paving", "lawn", "deck"] as const).map((cover) => ({ cover, width: 200 }));

/** Walls that between them make every rule speak. */
const walls = [
  proofFixture(),
  proofFixture({
    project: (project) => {
      project.site.climate = {};
      delete project.site.weeksUncovered;
      delete project.limits.membrane;
      delete project.faces[0]!.toBoundary;
      delete project.faces[0]!.frameProjection;
      project.site.jurisdiction = "other";
      project.figures = {
        "light.ground.bare.light": { value: 0.25, source: "our own" },
        "light.ground.snow.light": { value: 7 },
        "species.species.black-locust.specificGravityGreen": { value: 0.7 },
        "species.species.black-spruce.densityAt12": { value: 400, unit: "kg/m3" },
        "meshes.openings.insects.opening": { value: { min: 2, max: 3 }, unit: "mm" },
        "meshes.openings.rodents.opening": { value: { min: 2 }, unit: "mm" },
        "species.species.black-locust.durability": { value: "oak" },
        "finishes.coverage.smoth.perCoat": { value: { max: 3 }, unit: "m2/L" },
        "clearances.clearances.france-ground.figures.0": { value: 20, unit: "cm" },
        "stock.reclaimedEndTrim": { value: { min: 50 }, unit: "mm" },
        "light.air.ozone": { value: 0, unit: "cm" },
      };
      project.limits.cavityMin.value = 100;
    },
    facade: ({ faces: [face] }) => void face!.vents.splice(0),
  }),
  proofFixture({
    project: (project) => {
      project.faces[0]!.toBoundary = 900;
      project.faces[0]!.frameProjection = 10;
      project.pile!.boards[0]!.face = "painted";
      project.site.climate!.wind = { meanMPerS: 4, fromDeg: 200, basis: "memory" };
      project.site.climate!.precipitationMm = project.site.climate!.snowDepthMm!;
      project.site.exposure = { seaKm: 0.4, sulphurDioxideUgPerM3: 5, basis: "given" };
      project.faces[0]!.splash = { cover: "gravel" };
      project.limits.cavityRules = "switzerland-practice";
      for (const screw of project.stock.screws) screw.metal = "A2";
      Object.assign(project.buildUps[0]!.layers[0]!, { bearing: "firm", material: "foam" });
      Object.assign(project.limits.membrane!.maxGap, { value: 1 });
    },
    facade: ({ faces: [face] }) => {
      face!.ground = [[0, -100]];
      face!.openings = [{ id: "W1", kind: "window", region: { x: [300, 900], y: [1000, 1600] } }];
      face!.pieces.push({ ...face!.pieces[0]!, kind: "closure", mark: "N1", material: "mesh 4-1" });
      for (const vent of face!.vents) Object.assign(vent, { netCm2PerM: 5, closure: "N1" });
      for (const joint of face!.joints) joint.width = 1;
      for (const piece of face!.pieces)
        for (const point of piece.fixings) {
          point.hole = 4.8;
          point.through = [{ what: "insulation", thickness: 51 }];
        }
    },
  }),
  ...STRUCTURE_CODES.map((code) =>
    proofFixture({
      project: (project) => {
        Object.assign(project.site, structuredClone(WINDS[code]));
        Object.assign(sheetsOf(project).dataSheet, {
          modulusMPa: 9000,
          bendingStrengthMPa: 15,
          pullThroughN: 500,
          strengthLevel: "design",
          densityKgM3: 7000,
        });
        project.limits.sagSpanOver = { boards: { value: 150, basis: "typical" } };
      },
      facade: ({ faces: [face] }) => {
        const stud = { id: "stud", kind: "stud", z: [-140, 0] } as const;
        face!.solids = [{ ...structuredClone(stud), z: [-140, 0], region: BESIDE }];
        for (const piece of face!.pieces) if (piece.kind === "sheet") piece.massKg = 400;
      },
    }),
  ),
];

describe("the texts of proof", () => {
  it("print without a missing key or value, in either language and either unit", () => {
    for (const context of walls) {
      const said = sentences(prove(context));
      expect(said.filter((text) => /\[(proof|structure|term)\.|undefined|NaN|Infinity/.test(text))).toEqual(
        [],
      );
    }
  });

  it("make every rule speak somewhere", () => {
    const codes = new Set(walls.flatMap((context) => prove(context).map(({ code }) => code)));
    expect(codes.size).toBe(PROOF_RULES.length);
  });

  it("need the same values in French as in English", () => {
    const names = (text: string) => [...text.matchAll(/\{(\w+)/g)].map(([, name]) => name).sort();
    for (const [key, { en, fr }] of Object.entries({ ...catalogue, ...structure })) {
      expect([key, names(fr)]).toEqual([key, names(en)]);
    }
  });

  it("are all named in the code, whole or by the start that a variable ends", () => {
    const folder = new URL("../../src/proof/", import.meta.url);
    const code = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => readFileSync(new URL(name, folder), "utf8"))
      .join("\n");
    const whole = new Set([...code.matchAll(/"(proof\.[\w.-]+)"/g)].map(([, key]) => key));
    const starts = [...code.matchAll(/`(proof\.[\w.-]+)\$\{/g)]
      .map(([, start = ""]) => start)
      .filter((start) => start !== "proof.input.");
    const unused = Object.keys(catalogue).filter((key) => {
      const meaning = /^proof\.input\.(.+)$/.exec(key)?.[1];
      if (meaning) return !code.includes(`meaning: "${meaning}"`);
      return !whole.has(key) && !starts.some((start) => key.startsWith(start));
    });
    expect(unused).toEqual([]);
  });

  it("name every rule set that the demands hold", () => {
    const demands = demandsOf(walls[0]!.project);
    const ids = [
      ...demands.cavityDepth,
      ...demands.ventArea,
      ...demands.groundClearance,
      ...demands.boundary,
      ...demands.proportion,
      ...demands.boardThickness,
      ...demands.animals,
      ...demands.fireStops,
      ...SPLASHES.flatMap((splash) => splashRules(walls[0]!.project, splash)),
    ].map(({ id }) => `proof.rule.${id}`);
    const named = Object.keys(catalogue).filter((key) => key.startsWith("proof.rule."));
    expect([...new Set(ids)].sort()).toEqual(named.sort());
  });
});

it("findings stand by weight, and the same wall gives the same findings", () => {
  const outcomes = prove(walls[0]!).map(({ outcome }) => outcome);
  expect([...new Set(outcomes)]).toEqual(["cannot evaluate", "attention", "pass", "not applicable"]);
  expect(JSON.stringify(prove(proofFixture()))).toBe(JSON.stringify(prove(proofFixture())));
});
