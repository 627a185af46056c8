/** The program as a process of its own: streams, exit codes, signals, and how much it loads. */
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative, resolve } from "node:path";
import ts from "typescript";
import { afterAll, describe, expect, it } from "vitest";
import { checkout } from "../helpers/cli.ts";

const folder = mkdtempSync(join(tmpdir(), "outerleaf-process-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const DEMO = join(checkout, "examples/imperial.outerleaf.json");
const TSX = join(checkout, "node_modules/tsx/dist/loader.mjs");

/** Runs the sources as they stand; `interrupt` sends Ctrl-C once that has been printed. */
function start(argv: readonly string[], { interrupt }: { interrupt?: string } = {}) {
  return new Promise<{ code: number | null; out: string; err: string }>((done) => {
    const child = spawn(process.execPath, ["--import", TSX, join(checkout, "src/cli/main.ts"), ...argv], {
      cwd: folder,
      env: { ...process.env, LC_ALL: "C", OUTERLEAF_DATA: join(folder, "data") },
    });
    let out = "";
    let err = "";
    child.stdout.on("data", (bytes: Buffer) => {
      out += bytes.toString();
      if (interrupt !== undefined && out.includes(interrupt)) child.kill("SIGINT");
    });
    child.stderr.on("data", (bytes: Buffer) => {
      err += bytes.toString();
    });
    child.on("close", (code) => done({ code, out, err }));
  });
}

describe("the process", () => {
  it("prints JSON and nothing else on standard output, whole, through a pipe", async () => {
    const { code, out, err } = await start(["set-out", DEMO, "--json"]);
    expect(code).toBeLessThan(2);
    expect(err).toBe("");
    expect(JSON.parse(out)).toMatchObject({ schemaVersion: 1 });
  });

  it("ends with 2 and a sentence for a mistake", async () => {
    const { code, out, err } = await start(["check", "nowhere.json"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("nowhere.json cannot be read: there is no such file or folder.");
  });

  // Windows has no signals to send to another process.
  it.skipIf(process.platform === "win32")("stops serving on Ctrl-C and ends with 0", async () => {
    const { code, out, err } = await start(["serve", DEMO, "--port", "0"], { interrupt: "Ctrl-C" });
    expect({ code, err }).toEqual({ code: 0, err: "Stopped.\n" });
    expect(out).toContain("http://127.0.0.1:");
  });
});

/** Files loaded with a module: its imports and theirs, without those of types and those made only when asked for. */
function loadedWith(entry: string, seen = new Set<string>()): Set<string> {
  const path = relative(checkout, entry).replaceAll("\\", "/");
  if (seen.has(path) || !entry.endsWith(".ts")) return seen;
  seen.add(path);
  const source = ts.createSourceFile(entry, readFileSync(entry, "utf8"), ts.ScriptTarget.Latest);
  for (const node of source.statements) {
    if (!ts.isImportDeclaration(node) && !ts.isExportDeclaration(node)) continue;
    const typesOnly = ts.isImportDeclaration(node)
      ? node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword
      : node.isTypeOnly;
    const from = node.moduleSpecifier;
    if (typesOnly || from === undefined || !ts.isStringLiteral(from)) continue;
    if (from.text.startsWith(".")) loadedWith(resolve(dirname(entry), from.text), seen);
    else seen.add(from.text);
  }
  return seen;
}

describe("what is loaded", () => {
  const loads = (file: string): string[] => {
    const path = join(checkout, "src/cli", file);
    expect(existsSync(path)).toBe(true);
    return [...loadedWith(path)];
  };
  const of = (files: readonly string[], rooms: RegExp): string[] => files.filter((file) => rooms.test(file));

  // What writes JSON and plain text, and hands them on in pieces, stands in the output room and draws nothing.
  it("to read a command line is neither the schema nor any room above the project", () => {
    const files = loads("main.ts");
    expect(files).toContain("commander");
    expect(
      of(
        files,
        /^zod$|^src\/(?:setout|proof|cutting|scene|output(?!\/(?:json\/|report\/|pieces|utf8))|design|server|codes)/,
      ),
    ).toEqual([]);
  });

  it("to check a file is nothing that designs, draws or serves", () => {
    const files = loads("commands/check.ts");
    expect(files).toContain("zod");
    expect(
      of(
        files,
        /^src\/(?:setout|proof|cutting|scene|output(?!\/(?:json\/|report\/|pieces|utf8))|design|server)|hono/,
      ),
    ).toEqual([]);
  });

  it("to set out, prove and cut is nothing that draws or serves", () => {
    for (const command of ["set-out", "prove", "cut", "takeoff"]) {
      expect(
        of(
          loads(`commands/${command}.ts`),
          /^src\/(?:scene|output(?!\/(?:json\/|report\/|pieces|utf8))|server)|hono/,
        ),
      ).toEqual([]);
    }
  });
});
