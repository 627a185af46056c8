/** What is painted of wind on the elevation says the same as the findings, and each step can be told without colour. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import { windBands } from "../../src/proof/wind/bands.ts";
import { windStudies } from "../../src/proof/wind/study.ts";
import { type FaceUse, windUses } from "../../src/proof/wind/uses.ts";
import { legendOfUses, stepOfUse, USE_STEPS, windUseItems } from "../../src/scene/views/wind-use.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";
import { WINDS } from "../helpers/winds.ts";

const read = readProject(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"), "demo");
if (!read.ok) throw new Error("the demo cannot be read");
const demo = design(read.project);
const uses = windUses(demo);

const greatest = (list: readonly { readonly use: number | undefined }[]): number =>
  Math.max(...list.map(({ use }) => use ?? 0));

describe("uses of the demo", () => {
  it("are at their greatest what the findings say governs, face by face", () => {
    const worst = (codes: readonly string[], face: string): number =>
      Math.max(
        0,
        ...demo.findings
          .filter(
            ({ code, where, ratio }) => codes.includes(code) && where.face === face && ratio !== undefined,
          )
          .map(({ ratio }) => ratio ?? 0),
      );
    const compared = uses.map(({ face, skins, carriers, screws }) => [
      [greatest(skins), worst(["P046", "P047"], face)],
      [greatest(carriers), worst(["P048", "P049"], face)],
      [greatest(screws.filter(({ holds }) => holds === "skin")), worst(["P050"], face)],
      [greatest(screws.filter(({ holds }) => holds === "carriers")), worst(["P051"], face)],
    ]);
    expect(uses.length).toBeGreaterThan(6);
    for (const [painted = -1, found = -2] of compared.flat()) expect(painted).toBeCloseTo(found, 9);
  });

  it("tell of every screw of boards, sheets, rails and battens where it stands", () => {
    for (const { face, screws } of uses) {
      const pieces = demo.facade.faces.find(({ id }) => id === face)?.pieces ?? [];
      const kinds = new Set(["board", "sheet", "batten", "counter-batten", "rail"]);
      const all = pieces.filter(({ kind }) => kinds.has(kind)).flatMap(({ fixings }) => fixings);
      expect(screws.length).toBe(all.length);
    }
  });

  it("nothing is painted as judged where a limit is missing", () => {
    const lacking = design({
      ...read.project,
      limits: { ...read.project.limits, sagSpanOver: undefined },
    } as never);
    const skins = windUses(lacking).flatMap((one) => one.skins);
    expect(skins.length).toBeGreaterThan(100);
    expect(skins.every(({ use }) => use === undefined || use > 1)).toBe(true);
    const without = { ...read.project, site: { ...read.project.site, wind: undefined } };
    expect(windUses(design(without as never))).toEqual([]);
  });
});

describe("the drawing of them", () => {
  const [first] = demo.facade.faces;
  const of = uses.find(({ face }) => face === first?.id);
  if (!first || !of) throw new Error("the demo has no face");

  it("has every strip, skin, carrier and screw once", () => {
    const items = windUseItems(first, of, 1 / 50);
    const count = (kind: string) => items.filter((item) => item.kind === kind).length;
    expect(count("circle")).toBe(of.screws.length);
    expect(count("polygon")).toBe(of.skins.length + of.carriers.length + of.bands.length);
  });

  it("steps at a half, three quarters, nine tenths and the whole, over it alone gives", () => {
    expect([0, 0.5, 0.51, 0.75, 0.76, 0.9, 0.91, 1, 1.0001, undefined].map(stepOfUse)).toEqual([
      ...["half", "half", "three-quarters", "three-quarters", "nine-tenths", "nine-tenths"],
      ...["whole", "whole", "over", "unknown"],
    ]);
  });

  it("tells no two steps by their colour alone", () => {
    const piece = (use: number | undefined): FaceUse => ({
      ...of,
      bands: [],
      screws: [],
      carriers: [],
      skins: [{ mark: of.skins[0]?.mark ?? "", use, governs: "strength" }],
    });
    const hatches = [0.3, 0.6, 0.8, 1, 2, undefined].map((use) =>
      windUseItems(first, piece(use), 1 / 50)
        .filter((item) => item.kind === "hatch")
        .map(({ pattern, spacing }) => `${pattern} ${spacing}`)
        .join(),
    );
    expect(new Set(hatches).size).toBe(USE_STEPS.length);
    expect(legendOfUses(1).items.filter(({ kind }) => kind === "text")).toHaveLength(USE_STEPS.length);
  });
});

describe("strips at corners", () => {
  const context = proofFixture({
    project: (project) => Object.assign(project.site, structuredClone(WINDS["canada-nbc-2020"])),
  });
  const [study] = windStudies(context);
  if (!study) throw new Error("no wind");
  const outline = [
    [0, 0],
    [6000, 0],
    [6000, 2400],
    [0, 2400],
  ] as const;
  const bands = (left: "free" | "external" | "internal", right: "free" | "external" | "internal") =>
    windBands({ outline, azimuthDeg: 10, meets: { left, right } }, study.wind).map(({ strip, x }) => [
      strip.id,
      ...x,
    ]);

  it("stand at outer ends and at ends that nothing is known of, not at an inner corner", () => {
    expect(bands("free", "external")).toEqual([
      ["end", 0, 1000],
      ["field", 1000, 5000],
      ["end", 5000, 6000],
    ]);
    expect(bands("external", "internal")).toEqual([
      ["end", 0, 1000],
      ["field", 1000, 6000],
    ]);
    expect(bands("internal", "free")).toEqual([
      ["field", 0, 5000],
      ["end", 5000, 6000],
    ]);
  });

  it("stand at both ends between two inner corners, which no figure of a code shows", () => {
    expect(bands("internal", "internal")).toEqual(bands("external", "external"));
  });
});
