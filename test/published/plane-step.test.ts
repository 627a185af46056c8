/**
 * Faces that meet in one plane: the step between two build-ups and the packers that close it. Common practice; the
 * arithmetic is the builder's own: 38 + 6 = 44 against 19 + 19 = 38.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readDocument } from "../../src/project/read.ts";
import { packersFor } from "../../src/setout/planes.ts";

interface Layer {
  kind: string;
  stock?: string;
  thickness?: number;
}

/** The demo's front with 6 mm sheets on 38 mm battens beside 19 mm boards on 19 mm battens, nothing else between. */
function frontWith({ packer }: { packer?: number }) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  const insulation: Layer[] = document.buildUps[0].layers.slice(0, 2);
  document.buildUps[0].layers = [
    ...insulation,
    ...(packer ? [{ kind: "packer", thickness: packer }] : []),
    { kind: "batten", stock: "b19x64" },
  ];
  document.buildUps[1].layers = [...insulation, { kind: "batten", stock: "b38x64" }];
  document.claddings[0].thickness = 19;
  document.claddings[1].thickness = 6;
  const result = readDocument(document, "step");
  if (!result.ok) throw new Error("the step example does not read");
  const { facade, findings } = design(result.project);
  return { step: facade.steps[0], finding: findings.find(({ code }) => code === "S007") };
}

describe("6 mm sheets on 38 mm battens against 19 mm boards on 19 mm battens (common practice)", () => {
  it("stand 6 mm apart, reported as a fail that names the packers 5 + 1", () => {
    const { step, finding } = frontWith({});
    expect(step).toEqual({
      face: "front",
      zones: ["boards", "sheets"],
      step: 6,
      closedBy: { zone: "boards", packers: [5, 1] },
    });
    expect(finding).toMatchObject({ outcome: "fail", demand: 6, limit: 1, unit: "mm", ratio: 6 });
    expect(finding?.hint).toEqual({ key: "setout.step.pack", values: { zone: "boards", packers: "5 + 1" } });
  });

  it("lie in one plane once 6 mm of packers stand behind the boards", () => {
    const { step, finding } = frontWith({ packer: 6 });
    expect(step?.step).toBe(0);
    expect(finding?.outcome).toBe("pass");
  });
});

describe("packers of the stock", () => {
  it.each([
    [6, [1, 2, 3, 5], [5, 1]],
    [4, [1, 2, 3, 5], [3, 1]],
    [10, [1, 2, 3, 5], [5, 5]],
    [0.5, [1, 2, 3, 5], undefined],
    [25, [1, 2, 3, 5], undefined],
  ])("for %s mm out of %j are %j", (thickness, stock, expected) => {
    expect(packersFor(thickness, stock)).toEqual(expected);
  });
});
