/** P044: figures of the project's own, which stand in place of the catalogue's, and those that cannot. */
import { describe, expect, it } from "vitest";
import { demandsOf } from "../../src/codes/demands.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { starterProject } from "../../src/project/starter.ts";
import { ownFigures } from "../../src/proof/own-figures.ts";
import { timberOutdoors } from "../../src/proof/timber-outdoors.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { boardsOf, proofFixture } from "../helpers/proof-fixture.ts";

const withFigures = (
  figures: NonNullable<Project["figures"]>,
  change: (project: Project) => void = () => {},
) =>
  proofFixture({
    project: (project) => {
      project.figures = figures;
      change(project);
    },
  });

/** The one finding on one figure, in words. */
function said(key: string, figure: NonNullable<Project["figures"]>[string]) {
  const [found, ...others] = ownFigures(withFigures({ [key]: figure }));
  expect(others).toEqual([]);
  if (!found) throw new Error("no finding");
  const { outcome, where, says, hint, edit, source } = found;
  return {
    outcome,
    path: where.path,
    says: say(says, ENGLISH_MM),
    hint: hint && say(hint, ENGLISH_MM),
    edit,
    source,
  };
}

const FRENCH_GROUND = "clearances.clearances.france-ground.figures.0";
const CEDAR = "species.species.western-redcedar";

describe("P044 a figure of the project's own", () => {
  it("stands with its source, and says what it replaces", () => {
    expect(said(FRENCH_GROUND, { value: 250, unit: "mm", source: "NF DTU 41.2, 2025" })).toEqual({
      outcome: "pass",
      path: `/figures/${FRENCH_GROUND}`,
      says: `${FRENCH_GROUND} is 250 mm here, in place of 200 mm of the reference data.`,
      source: { kind: "document", document: "NF DTU 41.2, 2025" },
    });
  });

  it("is read with its source in the catalogue's place, given and no longer remembered", () => {
    const grades = (figures: Project["figures"]) =>
      demandsOf({ ...proofFixture().project, figures }).rainGrades;
    const moderate = { value: 2, unit: "m2/s" };
    expect(grades(undefined)).toMatchObject({ moderate: 3, severe: 7, basis: "memory" });
    expect(grades({ "climates.drivenRain.moderate": moderate })).toMatchObject({
      moderate: 2,
      basis: "memory",
    });
    expect(
      grades({
        "climates.drivenRain.moderate": moderate,
        "climates.drivenRain.severe": { value: 5, unit: "m2/s" },
      }),
    ).toMatchObject({ moderate: 2, severe: 5, basis: "given", source: { kind: "your project" } });
  });

  it("settles what was provisional, and can fail what passed", () => {
    const judged = (value?: string) =>
      timberOutdoors(
        withFigures(value ? { [`${CEDAR}.durability`]: { value } } : {}, (project) =>
          Object.assign(boardsOf(project), { species: "western redcedar", lots: undefined }),
        ),
      ).map(({ outcome, provisional }) => ({ outcome, provisional }));
    expect(judged()).toEqual([{ outcome: "pass", provisional: true }]);
    expect(judged("heartwood-resistant")).toEqual([{ outcome: "pass", provisional: false }]);
    expect(judged("heartwood-not-resistant")).toEqual([{ outcome: "attention", provisional: false }]);
  });

  it("ten times off is noted and stands", () => {
    const far = { outcome: "attention", hint: "Ten times off or more: check the number and its unit." };
    expect(said(FRENCH_GROUND, { value: 2000, unit: "mm" })).toMatchObject(far);
    expect(said(FRENCH_GROUND, { value: 20, unit: "mm" })).toMatchObject(far);
    expect(said(FRENCH_GROUND, { value: 1999, unit: "mm" })).toMatchObject({ outcome: "pass" });
  });

  it("may give one number for a span, and a span within the catalogue's bounds", () => {
    const wood = "species.species.european-larch.densityAt12";
    expect(said(wood, { value: 590, unit: "kg/m3" })).toMatchObject({
      outcome: "pass",
      says: `${wood} is 590 kg/m3 here, in place of 470 to 650 kg/m3 of the reference data.`,
    });
    expect(said(wood, { value: { min: 500, max: 600 }, unit: "kg/m3" })).toMatchObject({ outcome: "pass" });
  });
});

describe("P044 a figure that cannot stand fails, is left aside and says how to mend it", () => {
  const list = "The names, units and values of the reference data stand in docs/sources.md.";

  it("a name that the data does not have, with the nearest and its edit", () => {
    const figures = { [`${CEDAR}.durabilty`]: { value: "heartwood-resistant" } };
    const near = `${CEDAR}.durability`;
    const found = said(`${CEDAR}.durabilty`, { value: "heartwood-resistant" });
    expect(found).toMatchObject({ outcome: "fail", hint: `${near} may be meant.` });
    expect(applyPatch({ figures }, found.edit ?? [])).toMatchObject({
      ok: true,
      document: { figures: { [near]: { value: "heartwood-resistant" } } },
    });
    expect(said("moon.phase", { value: 1 })).toMatchObject({ outcome: "fail", hint: list });
  });

  it("one that is read by nothing, or behind a better one", () => {
    expect(said("species.species.white-spruce.specificGravityGreen", { value: 0.33 })).toMatchObject({
      outcome: "fail",
      says: "No rule reads species.species.white-spruce.specificGravityGreen; nothing is made of it.",
      hint: list,
    });
    expect(said(`${CEDAR}.densityAt12`, { value: 350, unit: "kg/m3" })).toMatchObject({
      outcome: "fail",
      hint: `The rules read ${CEDAR}.specificGravityAt12 instead.`,
    });
  });

  it.each([
    [FRENCH_GROUND, { value: 25, unit: "cm" }, "Give it in mm."],
    [FRENCH_GROUND, { value: 250 }, "Give it in mm."],
    [`${CEDAR}.specificGravityAt12`, { value: 0.33, unit: "kg/m3" }, "It is a ratio: give no unit."],
    [FRENCH_GROUND, { value: "high", unit: "mm" }, list],
    [FRENCH_GROUND, { value: { min: 1, max: 2 }, unit: "mm" }, list],
    [FRENCH_GROUND, { value: 0, unit: "mm" }, list],
    ["light.ground.bare.light", { value: 1.01 }, list],
    ["species.rules.fibreSaturation", { value: 101, unit: "%" }, list],
    ["species.species.european-larch.densityAt12", { value: { min: 600, max: 500 }, unit: "kg/m3" }, list],
    ["species.species.european-larch.densityAt12", { value: { min: 600 }, unit: "kg/m3" }, list],
    ["species.species.european-larch.densityAt12", { value: { min: -1, max: 500 }, unit: "kg/m3" }, list],
  ])("%s as %j", (key, figure, hint) => {
    expect(said(key, figure)).toMatchObject({ outcome: "fail", hint });
    const { figures: _said, ...demands } = demandsOf(withFigures({ [key]: figure }).project);
    const { figures: _none, ...plain } = demandsOf(proofFixture().project);
    expect(demands).toEqual(plain);
  });

  it("a word that no class has", () => {
    const found = said(`${CEDAR}.durability`, { value: "durable" });
    expect(found).toMatchObject({ outcome: "fail" });
    expect(found.hint).toContain("heartwood-resistant");
  });

  it("a key inside a figure that is not known is told as anywhere in the file", () => {
    const read = readDocument(
      { ...starterProject(), figures: { [FRENCH_GROUND]: { value: 250, units: "mm" } } },
      "wall",
    );
    expect(read.findings.find(({ code }) => code === "F008")?.where.path).toBe(
      `/figures/${FRENCH_GROUND}/units`,
    );
  });
});
