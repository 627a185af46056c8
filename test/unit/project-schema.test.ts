import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { projectSchemaFile } from "../../scripts/docs-schema.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { projectJsonSchema } from "../../src/project/schema/project.ts";
import { starterProject } from "../../src/project/starter.ts";

const root = new URL("../../", import.meta.url);
const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, root), "utf8"));
const names = readdirSync(new URL("examples/", root)).filter((name) => name.endsWith(".outerleaf.json"));
const ajv = new Ajv2020({ allErrors: true, strict: false, validateFormats: false });

describe("the published schema of the project file", () => {
  const validate = ajv.compile(projectJsonSchema());

  it("is what the program reads with", () => {
    // The formatter folds short lists, so the values are compared and not the bytes.
    expect(read("schemas/project.schema.json")).toEqual(JSON.parse(projectSchemaFile()));
  });

  it("is valid JSON Schema 2020-12", () => {
    const schema = projectJsonSchema();
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(ajv.validateSchema(schema)).toBe(true);
  });

  it.each(names)("accepts examples/%s", (name) => {
    expect(validate(read(`examples/${name}`)) || validate.errors).toBe(true);
  });

  it("accepts the starter project and unknown keys", () => {
    expect(validate(starterProject()) || validate.errors).toBe(true);
    expect(validate({ ...starterProject(), painter: "not yet chosen" })).toBe(true);
  });

  it.each([
    ["no faces", [{ op: "replace", path: "/faces", value: [] }]],
    ["a missing field", [{ op: "remove", path: "/faces/0/azimuthDeg" }]],
    ["a number in quotes", [{ op: "replace", path: "/faces/0/azimuthDeg", value: "172" }]],
    ["an unknown word", [{ op: "replace", path: "/corners/0/kind", value: "glued" }]],
    ["an unknown kind of cladding", [{ op: "replace", path: "/claddings/0/kind", value: "tiles" }]],
    ["an id with a space", [{ op: "replace", path: "/stock/battens/0/id", value: "19 x 64" }]],
    ["a width of nothing", [{ op: "replace", path: "/structure/studs/width", value: 0 }]],
    ["a negative gap", [{ op: "replace", path: "/claddings/0/endGap", value: -1 }]],
    ["a length out of range", [{ op: "replace", path: "/faces/0/outline/0/0", value: 4_800_000 }]],
    ["a point of one value", [{ op: "replace", path: "/faces/0/outline/0", value: [1] }]],
    ["a point of three values", [{ op: "replace", path: "/faces/0/outline/0", value: [1, 2, 3] }]],
    ["another version", [{ op: "replace", path: "/schemaVersion", value: 2 }]],
  ])("refuses %s", (_, patch) => {
    const changed = applyPatch(read("examples/atelier-bouleau.outerleaf.json"), patch);
    expect(changed.ok).toBe(true);
    expect(validate(changed.ok && changed.document)).toBe(false);
  });
});
