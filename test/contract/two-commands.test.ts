import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { checkout } from "./planted-tree.ts";

/** Stands for the builder: notes which part it was asked for, and makes what that part's result is. */
const builder = `
import { appendFileSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
const web = process.argv.includes("vite.config.ts");
appendFileSync("built.txt", web ? "web " : "cli ");
if (existsSync("broken")) process.exit(1);
mkdirSync(web ? "dist/web" : "dist/cli", { recursive: true });
writeFileSync(web ? "dist/web/index.html" : "dist/cli/main.js", 'console.log("started", process.argv.slice(2).join(" "));');
`;

/** Stands for npm: fails as often as the file "failures" says, then makes node_modules what the lock file names. */
const npm = `
import { appendFileSync, copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
appendFileSync("installed.txt", process.argv.slice(2).join(" ") + " ");
const left = existsSync("failures") ? Number(readFileSync("failures", "utf8")) : 0;
if (left > 0) { writeFileSync("failures", String(left - 1)); process.exit(1); }
mkdirSync("node_modules", { recursive: true });
copyFileSync("package-lock.json", "node_modules/.package-lock.json");
`;

describe("npm start and npm run outerleaf", () => {
  let tree = "";

  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(tree, path)), { recursive: true });
    writeFileSync(join(tree, path), text);
  };
  /** What has been noted in a file since the last look. */
  const noted = (path: string): string[] => {
    if (!existsSync(join(tree, path))) return [];
    const words = readFileSync(join(tree, path), "utf8").trim().split(" ").sort();
    rmSync(join(tree, path));
    return words;
  };
  const start = (...args: string[]) => {
    const env = { ...process.env, npm_execpath: join(tree, "npm-cli.js") };
    return spawnSync(process.execPath, ["scripts/run.mjs", ...args], { cwd: tree, env, encoding: "utf8" });
  };

  beforeEach(() => {
    tree = mkdtempSync(join(tmpdir(), "outerleaf-commands-"));
    cpSync(join(checkout, "scripts"), join(tree, "scripts"), { recursive: true });
    cpSync(join(checkout, "bin"), join(tree, "bin"), { recursive: true });
    write("package.json", '{ "type": "module" }');
    write("npm-cli.js", npm);
    write("node_modules/vite/package.json", '{ "type": "module" }');
    write("node_modules/vite/bin/vite.js", builder);
    write("package-lock.json", '{ "packages": { "": {}, "node_modules/a": { "version": "1.0.0" } } }');
    write("src/web/page.ts", "1");
    write("src/cli/main.ts", "1");
    write("src/units/length.ts", "1");
    write("data/stock.json", "1");
  });
  afterEach(() => rmSync(tree, { recursive: true, force: true }));

  it("installs and builds what is missing, passes the arguments on, and the second time does neither", () => {
    const first = start("start", "--once");
    expect(first.stdout).toBe("started start --once\n");
    expect(noted("installed.txt")).toEqual(["ci"]);
    expect(noted("built.txt")).toEqual(["cli", "web"]);
    const second = start("check", "a.json");
    expect(second.stdout).toBe("started check a.json\n");
    expect(second.stderr).toBe("");
    expect(noted("installed.txt")).toEqual([]);
    expect(noted("built.txt")).toEqual([]);
  });

  it("goes on without the database's library where it could not be built, and says what it needs", () => {
    const without = start("start");
    expect(without.status).toBe(0);
    expect(without.stderr).toContain("needs Python 3, make and a C++ compiler");
    rmSync(join(tree, "node_modules/.outerleaf-stamp"));
    rmSync(join(tree, "node_modules/.package-lock.json"));
    write("node_modules/better-sqlite3/package.json", "{}");
    expect(start("start").stderr).not.toContain("Python");
    expect(noted("installed.txt")).toEqual(["ci", "ci"]);
  });

  it("builds only what a change goes into", () => {
    start();
    noted("built.txt");
    const rebuilt = [
      "src/web/page.ts",
      "src/cli/main.ts",
      "src/units/length.ts",
      "examples/house.json",
      "vite.config.ts",
    ].map((path) => {
      write(path, "2");
      start();
      return [path, ...noted("built.txt")];
    });
    expect(rebuilt).toEqual([
      ["src/web/page.ts", "web"],
      ["src/cli/main.ts", "cli"],
      ["src/units/length.ts", "cli", "web"],
      ["examples/house.json", "cli"],
      ["vite.config.ts", "web"],
    ]);
  });

  it("installs again when the lock file names another version, unless that was installed by hand", () => {
    start();
    noted("installed.txt");
    const other = '{ "packages": { "": {}, "node_modules/a": { "version": "2.0.0" } } }';
    write("package-lock.json", other);
    write("node_modules/.package-lock.json", other);
    start();
    expect(noted("installed.txt")).toEqual([]);
    write("package-lock.json", other.replace("2.0.0", "3.0.0"));
    start();
    expect(noted("installed.txt")).toEqual(["ci"]);
  });

  it("tries a failed installation once more, then says what to do", () => {
    write("failures", "1");
    expect(start().status).toBe(0);
    expect(noted("installed.txt")).toEqual(["ci", "ci"]);
    rmSync(join(tree, "node_modules", ".outerleaf-stamp"));
    rmSync(join(tree, "node_modules", ".package-lock.json"));
    write("failures", "2");
    const { status, stderr } = start();
    expect(status).toBe(2);
    expect(stderr).toContain("the libraries could not be installed");
    expect(stderr).not.toContain("    at ");
  });

  it("starts nothing after a failed build, and builds again the next time", () => {
    write("broken", "");
    const { status, stdout, stderr } = start("start");
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toContain("could not be built");
    rmSync(join(tree, "broken"));
    noted("built.txt");
    expect(start().status).toBe(0);
    expect(noted("built.txt")).toEqual(["cli", "web"]);
  });

  it("without a build the launcher says how to make one", () => {
    const { status, stderr } = spawnSync(process.execPath, ["bin/outerleaf.js"], {
      cwd: tree,
      encoding: "utf8",
    });
    expect(status).toBe(2);
    expect(stderr).toContain("run `npm start` or `npm run build` first");
  });
});
