/** A finding names the figures of the reference data that it rests on: one that is replaced changes the finding that names it. */
import { describe, expect, it } from "vitest";
import { figureKeys, type OwnFigure } from "../../src/catalogue/own-figures.ts";
import { demandsOf } from "../../src/codes/demands.ts";
import type { Finding } from "../../src/findings/finding.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { prove } from "../../src/proof/index.ts";
import { boardsOf, proofFixture } from "../helpers/proof-fixture.ts";

function findings(figures?: Project["figures"]): Finding[] {
  const { project, facade } = proofFixture({
    project: (one) => {
      Object.assign(boardsOf(one), { species: "northern-white-cedar", lots: undefined });
      one.limits.cavityRules = "austria-timber-information";
      one.site.exposure = { seaKm: 50, sulphurDioxideUgPerM3: 5, basis: "given" };
      for (const screw of one.stock.screws) screw.metal = "A4";
      if (one.site.climate) {
        one.site.climate.rainfallMm = { values: Array(12).fill(80), basis: "given" };
        one.site.climate.wind = { meanMPerS: 4, fromDeg: 180, basis: "given" };
      }
      if (figures) one.figures = figures;
    },
  });
  return prove({ project, facade, demands: demandsOf(project) });
}

const told = (all: readonly Finding[], code: string): string =>
  JSON.stringify(
    all
      .filter((one) => one.code === code)
      .map(({ says, demand, limit, working }) => [says, demand, limit, working]),
  );

const before = findings();
const named = (code: string): string[] =>
  before.filter((one) => one.code === code).flatMap(({ figures = [] }) => figures);

describe("replaced by itself, the finding that names it changes", () => {
  it.each<[code: string, key: string, own: OwnFigure]>([
    ["P015", "species.species.northern-white-cedar.shrinkageTangential", { value: 9, unit: "%" }],
    ["P015", "species.species.northern-white-cedar.fibreSaturation", { value: 28, unit: "%" }],
    ["P021", "light.ground.bare.ultraviolet", { value: 0.2 }],
    ["P021", "light.air.ozone", { value: 0.2, unit: "cm" }],
    ["P021", "light.sun.constant", { value: 1361, unit: "W/m2" }],
    ["P033", "climates.drivenRain.moderate", { value: 0.5, unit: "m2/s" }],
    ["P036", "meshes.openings.rodents.opening", { value: 1, unit: "mm" }],
    ["P013", "heat.sunlitSheet.sunOnWall", { value: 1000, unit: "W/m2" }],
    ["P034", "heat.cavityFlow.inletDischarge", { value: 0.5 }],
    ["P038", "fasteners.corrosion.unwashed", { value: -2 }],
  ])("%s: %s", (code, key, own) => {
    expect(named(code)).toContain(key);
    const after = findings({ [key]: { ...own, source: "own" } });
    expect(told(after, code)).not.toBe(told(before, code));
    // It is named still, now that it is the project's own.
    expect(after.filter((one) => one.code === code).flatMap(({ figures = [] }) => figures)).toContain(key);
  });
});

it("names none that cannot be replaced, and none twice", () => {
  const replaceable = new Set(figureKeys());
  for (const { code, figures = [] } of before) {
    expect({ code, unknown: figures.filter((key) => !replaceable.has(key)) }).toEqual({ code, unknown: [] });
    expect(new Set(figures).size).toBe(figures.length);
  }
});
