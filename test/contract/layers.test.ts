import { createRequire } from "node:module";
import { join } from "node:path";
import { cruise, type ICruiseResult, type IFlattenedRuleSet } from "dependency-cruiser";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { checkout, withPlantedTree } from "./planted-tree.ts";

const configuration = createRequire(import.meta.url)("../../.dependency-cruiser.cjs") as {
  forbidden: NonNullable<IFlattenedRuleSet["forbidden"]>;
  options: Record<string, unknown>;
};

/** Every broken rule in a tree, as "rule: from → to". */
async function violations(tree: string): Promise<string[]> {
  const { output } = await cruise(["src"], {
    ...configuration.options,
    baseDir: tree,
    validate: true,
    ruleSet: { forbidden: configuration.forbidden },
  });
  return (output as ICruiseResult).summary.violations
    .map(
      ({ rule, from, to }) => `${rule.name}: ${from} → ${to.replace(/^.*node_modules\/([^/]+)\/.*$/, "$1")}`,
    )
    .sort();
}

/** The compiler's complaints about one project of a tree, as "TS1234 file". */
function complaints(tree: string, project: string): string[] {
  const path = join(tree, project);
  const { config } = ts.readConfigFile(path, ts.sys.readFile);
  const parsed = ts.parseJsonConfigFileContent(config, ts.sys, tree, undefined, path);
  const program = ts.createProgram({ rootNames: parsed.fileNames, options: parsed.options });
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ code, file }) => `TS${code} ${file?.fileName.slice(tree.length + 1) ?? ""}`);
}

const units = { "src/units/length.ts": "export type Length = number;\n" };

describe("the rooms import downwards only", () => {
  it("in the real sources", async () => {
    expect(await violations(checkout)).toEqual([]);
  });

  it.each([
    {
      what: "a type-only import from units up to setout",
      files: {
        "src/units/length.ts":
          'import type { Joint } from "../setout/joint.ts";\nexport type Length = Joint;\n',
        "src/setout/joint.ts": "export type Joint = number;\n",
      },
      refused: ["room-units: src/units/length.ts → src/setout/joint.ts"],
    },
    {
      what: "a type-only import from the core to the server",
      files: {
        "src/project/read.ts":
          'import type { Reply } from "../server/reply.ts";\nexport type Read = Reply;\n',
        "src/server/reply.ts": "export type Reply = string;\n",
      },
      refused: ["room-project: src/project/read.ts → src/server/reply.ts"],
    },
    {
      what: "an import between rooms that stand side by side",
      files: {
        "src/cutting/plan.ts": 'import { rule } from "../proof/rule.ts";\nexport const plan = rule;\n',
        "src/proof/rule.ts": "export const rule = 1;\n",
      },
      refused: ["room-cutting: src/cutting/plan.ts → src/proof/rule.ts"],
    },
    {
      what: "more than the project from the store, and the store from the web",
      files: {
        "src/store/keep.ts": 'import { design } from "../design.ts";\nexport const keep = design;\n',
        "src/design.ts": "export const design = 1;\n",
        "src/web/page.ts": 'import { keep } from "../store/keep.ts";\nexport const page = keep;\n',
      },
      refused: [
        "room-store: src/store/keep.ts → src/design.ts",
        "room-web: src/web/page.ts → src/store/keep.ts",
      ],
    },
    {
      what: "a module of Node in the core",
      files: {
        "src/units/file.ts": 'import { readFileSync } from "node:fs";\nexport const read = readFileSync;\n',
      },
      refused: ["core-without-node: src/units/file.ts → fs"],
    },
    {
      what: "a ring of files, types only",
      files: {
        "src/units/a.ts": 'import type { B } from "./b.ts";\nexport type A = B | 1;\n',
        "src/units/b.ts": 'import type { A } from "./a.ts";\nexport type B = A | 2;\n',
      },
      refused: ["no-circular: src/units/a.ts → src/units/b.ts"],
    },
    {
      what: "a test",
      files: {
        "src/units/a.ts": 'import { sample } from "../../test/sample.ts";\nexport const a = sample;\n',
        "test/sample.ts": "export const sample = 1;\n",
      },
      refused: ["src-stands-alone: src/units/a.ts → test/sample.ts"],
    },
    {
      what: "a room outside the list",
      files: {
        ...units,
        "src/helpers/a.ts": 'import type { Length } from "../units/length.ts";\nexport type A = Length;\n',
      },
      refused: ["known-room: src/helpers/a.ts → src/units/length.ts"],
    },
    {
      what: "a library outside the room that keeps it, and one for development",
      files: {
        "src/setout/a.ts": 'import ClipperLib from "clipper-lib";\nexport const a = ClipperLib;\n',
        "src/setout/b.ts": 'import fc from "fast-check";\nexport const b = fc;\n',
      },
      refused: [
        "declared-library: src/setout/b.ts → fast-check",
        "library-of-geometry: src/setout/a.ts → clipper-lib",
      ],
    },
  ])("and refuse $what", async ({ files, refused }) => {
    expect(await withPlantedTree(files as Record<string, string>, violations)).toEqual(refused);
  });
});

describe("the compiler's projects", () => {
  it.each([
    {
      what: "a type-only import from the core to the server",
      project: "tsconfig.core.json",
      files: {
        "src/project/read.ts":
          'import type { Reply } from "../server/reply.ts";\nexport type Read = Reply;\n',
        "src/server/reply.ts": "export type Reply = string;\n",
      },
      refused: ["TS6307 src/project/read.ts"],
    },
    {
      what: "a type-only import from the web to the store",
      project: "tsconfig.web.json",
      files: {
        "src/web/page.ts": 'import type { Keep } from "../store/keep.ts";\nexport type Page = Keep;\n',
        "src/store/keep.ts": "export type Keep = string;\n",
      },
      refused: ["TS6307 src/web/page.ts"],
    },
    {
      what: "what belongs to a browser or to Node in the core",
      project: "tsconfig.core.json",
      files: { "src/units/a.ts": "export const a = [document, process, Buffer, setTimeout, performance];\n" },
      refused: ["TS2584", "TS2591", "TS2591", "TS2304", "TS2304"].map((code) => `${code} src/units/a.ts`),
    },
    {
      what: "a module of Node in the core",
      project: "tsconfig.core.json",
      files: { "src/units/a.ts": 'export { readFileSync } from "node:fs";\n' },
      refused: ["TS2591 src/units/a.ts"],
    },
  ])("refuse $what", async ({ project, files, refused }) => {
    expect(
      await withPlantedTree(files as Record<string, string>, (tree) => complaints(tree, project)),
    ).toEqual(refused);
  });

  it("accept a downward import", async () => {
    const files = {
      ...units,
      "src/setout/joint.ts":
        'import type { Length } from "../units/length.ts";\nexport type Joint = Length;\n',
    };
    expect(await withPlantedTree(files, (tree) => complaints(tree, "tsconfig.core.json"))).toEqual([]);
    expect(await withPlantedTree(files, violations)).toEqual([]);
  });
});
