import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { checkout, withPlantedTree } from "./planted-tree.ts";

const biome = join(checkout, "node_modules/@biomejs/biome/bin/biome");

interface Refusal {
  readonly file: string;
  readonly line: number;
  readonly message: string;
}

/** What the linter, with our configuration, refuses in a tree. */
function lintErrors(tree: string): Refusal[] {
  const config = `--config-path=${join(checkout, "biome.json")}`;
  const args = [
    biome,
    "lint",
    config,
    "--vcs-enabled=false",
    "--reporter=github",
    "--max-diagnostics=none",
    "src",
  ];
  const { stdout } = spawnSync(process.execPath, args, { cwd: tree, encoding: "utf8" });
  return [...stdout.matchAll(/^::error .*?file=(.*?),line=(\d+),.*?::(.*)$/gm)].map(
    ([, file = "", line = "", message = ""]) => ({
      file: file.replaceAll("\\", "/").replace(/^.*(?=src\/)/, ""),
      line: Number(line),
      message,
    }),
  );
}

const forbidden = [
  ["Date.now", "export const a = Date.now();"],
  ["new Date", "export const a = new Date();"],
  ["performance.now", "export const a = performance.now();"],
  ["setTimeout", "export const a = (then: () => void) => setTimeout(then, 1);"],
  ["setInterval", "export const a = (then: () => void) => setInterval(then, 1);"],
  ["Math.random", "export const a = Math.random();"],
  ["Math.random by name", 'export const a = Math["random"]();'],
  ["Math.random taken out of Math", "const { random } = Math;\nexport const a = random();"],
  ["Math under another name", "const maths = Math;\nexport const a = maths;"],
  ["crypto", "export const a = crypto.randomUUID();"],
  ["a global by way of globalThis", "export const a = globalThis;"],
  ["console", 'export const a = () => console.log("");'],
  ["fetch", 'export const a = fetch("");'],
] as const;

describe("the core has no clock, no random number and no outside world", () => {
  it("the linter refuses each of them in a core room, and nothing of it elsewhere", async () => {
    const files = Object.fromEntries(
      forbidden.flatMap(([, code], at) => [
        [`src/setout/case-${at}.ts`, `${code}\n`],
        [`src/server/case-${at}.ts`, `${code}\n`],
      ]),
    );
    const errors = await withPlantedTree(files, lintErrors);
    const refused = forbidden
      .filter((_, at) => errors.some(({ file, line }) => file === `src/setout/case-${at}.ts` && line === 1))
      .map(([name]) => name);
    expect(refused).toEqual(forbidden.map(([name]) => name));
    expect(errors.filter(({ file }) => file.startsWith("src/server/"))).toEqual([]);
  });

  it("the linter refuses them in every core room", async () => {
    const rooms = roomsOfLayers();
    const planted = rooms.map((room) =>
      room === "design" ? "src/design.ts" : `src/${room}/deep/er/planted.ts`,
    );
    const code = "export const a = [Date.now(), Math.random()];\n";
    const errors = await withPlantedTree(Object.fromEntries(planted.map((path) => [path, code])), lintErrors);
    for (const path of planted) {
      expect(errors.filter(({ file }) => file === path).length, path).toBe(2);
    }
  });

  it("the compiler and the layers mean the same rooms by core", () => {
    const { include } = ts.readConfigFile(join(checkout, "tsconfig.core.json"), ts.sys.readFile).config as {
      include: string[];
    };
    const rooms = include.flatMap((path) => /^src\/([a-z]+)/.exec(path)?.[1] ?? []);
    expect(rooms).toEqual(roomsOfLayers());
  });

  it("no library brings the types of Node or of a browser into it", () => {
    const path = join(checkout, "tsconfig.core.json");
    const { config } = ts.readConfigFile(path, ts.sys.readFile);
    const { fileNames, options } = ts.parseJsonConfigFileContent(config, ts.sys, checkout, undefined, path);
    const program = ts.createProgram({ rootNames: fileNames, options });
    const files = program.getSourceFiles().map(({ fileName }) => fileName);
    expect(files.length).toBeGreaterThan(fileNames.length);
    expect(files.filter((name) => /@types\/node\/|\/lib\.dom\.|\/lib\.webworker\./.test(name))).toEqual([]);
  });
});

/** The core rooms as the layer rules name them. */
function roomsOfLayers(): string[] {
  const { forbidden: rules } = createRequire(import.meta.url)("../../.dependency-cruiser.cjs") as {
    forbidden: { name: string; from: { path?: string } }[];
  };
  const path = rules.find(({ name }) => name === "core-without-node")?.from.path ?? "";
  const rooms = /\(([a-z|]+)\)/.exec(path)?.[1]?.split("|") ?? [];
  return rooms.filter((room) => room !== "web");
}
