// Installs and builds what is missing or out of date, and nothing else. Needs Node alone.

import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root, runNpm, runTool } from "./processes.mjs";
import { giveUp, say, seconds } from "./say.mjs";

const lockFile = join(root, "package-lock.json");
const installStamp = join(root, "node_modules", ".outerleaf-stamp");

const INSTALLING = "Installing the libraries (once; it can take a few minutes) …";
const AGAIN = "That did not work; trying once more …";

/**
 * @typedef {object} Part
 * @property {string} name what the user is told
 * @property {string} config the builder's configuration
 * @property {string} result the file that shows it was built
 * @property {string} stamp where the fingerprint of its sources is kept
 * @property {string[]} sources files and folders it is made from
 * @property {string[]} without folders among the sources that do not go into it
 */

const shared = ["src", "data", "package-lock.json", "tsconfig.base.json"];

/** @type {Part[]} */
export const parts = [
  {
    name: "the command line",
    config: "vite.cli.config.ts",
    result: "dist/cli/main.js",
    stamp: "dist/cli.stamp",
    sources: [...shared, "examples", "package.json", "vite.cli.config.ts", "tsconfig.node.json"],
    without: ["src/web"],
  },
  {
    name: "the pages",
    config: "vite.config.ts",
    result: "dist/web/index.html",
    stamp: "dist/web.stamp",
    sources: [...shared, "vite.config.ts", "tsconfig.web.json"],
    without: ["src/store", "src/server", "src/cli"],
  },
];

/** Ends with a clear word on a Node that the libraries do not run on. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const enough = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (!enough) {
    giveUp(`this needs Node 20.19 or later (or 22.12 or later), and found ${process.versions.node}.`);
  }
}

/** Makes node_modules what the lock file says, unless it is already. */
export async function ensureInstalled() {
  requireNode();
  if (isInstalled()) return;
  await install();
}

/**
 * The same in two halves, for who has work that needs nothing compiled: the libraries are there when this settles, and what is
 * compiled for this machine when `compiled` does.
 * @returns {Promise<{ readonly compiled: Promise<void> }>}
 */
export async function installInHalves() {
  requireNode();
  if (isInstalled()) return { compiled: Promise.resolve() };
  const began = performance.now();
  say(INSTALLING);
  const { code } = await runNpm(["ci", "--ignore-scripts"]);
  if (code !== 0) {
    await install({ again: true });
    return { compiled: Promise.resolve() };
  }
  const compile = async () => {
    if ((await runNpm(["rebuild"])).code !== 0) return install({ again: true });
    writeFileSync(installStamp, installFingerprint());
    say(`Installed in ${seconds(performance.now() - began)}, other steps beside it.`);
  };
  return { compiled: compile() };
}

/** @param {{ again?: boolean }} [how] again: a first try has failed */
async function install({ again = false } = {}) {
  const began = performance.now();
  say(again ? AGAIN : INSTALLING);
  let { code } = await runNpm(["ci"]);
  if (code !== 0) {
    say(AGAIN);
    ({ code } = await runNpm(["ci"]));
  }
  if (code !== 0) {
    giveUp(
      "the libraries could not be installed. Is there a network? What npm said stands above; run it again with `npm ci`.",
    );
  }
  writeFileSync(installStamp, installFingerprint());
  if (!existsSync(join(root, "node_modules", "better-sqlite3"))) {
    say(
      "The database's library could not be built on this machine: it needs Python 3, make and a C++ compiler. The workbench\n" +
        "runs without it and keeps edits in the browser alone. To have it, install them and run `npm ci`.",
    );
  }
  say(`Installed in ${seconds(performance.now() - began)}.`);
}

/**
 * Builds each part whose sources changed since it was built.
 * @param {{ always?: boolean }} [how] always: build even what is up to date
 * @returns {Promise<boolean>} false where a part could not be built; the reason has been printed
 */
export async function ensureBuilt({ always = false } = {}) {
  const stale = parts
    .map((part) => ({ part, fingerprint: sourceFingerprint(part) }))
    .filter(({ part, fingerprint }) => always || !isBuilt(part, fingerprint));
  if (stale.length === 0) return true;
  say(`Building ${stale.map(({ part }) => part.name).join(" and ")} …`);
  const began = performance.now();
  const built = await Promise.all(stale.map(({ part, fingerprint }) => build(part, fingerprint)));
  if (built.includes(false)) return false;
  say(`Built in ${seconds(performance.now() - began)}.`);
  return true;
}

/**
 * @param {Part} part
 * @param {string} fingerprint
 */
function isBuilt(part, fingerprint) {
  const stamp = join(root, part.stamp);
  return (
    existsSync(join(root, part.result)) && existsSync(stamp) && readFileSync(stamp, "utf8") === fingerprint
  );
}

/**
 * @param {Part} part
 * @param {string} fingerprint
 */
async function build(part, fingerprint) {
  // Without its stamp an interrupted build counts as none.
  rmSync(join(root, part.stamp), { force: true });
  const { code, output } = await runTool("vite/bin/vite.js", ["build", "--config", part.config], {
    keep: true,
  });
  if (code !== 0 || !existsSync(join(root, part.result))) {
    say(`${output}\nOuterleaf: ${part.name} could not be built; the reason stands above.`);
    return false;
  }
  mkdirSync(join(root, "dist"), { recursive: true });
  writeFileSync(join(root, part.stamp), fingerprint);
  return true;
}

/** The kind of Node that compiled libraries are made for, then the lock file's hash. */
function installFingerprint() {
  const kind = `${process.platform} ${process.arch} ${process.versions.modules}`;
  return `${kind}\n${createHash("sha256").update(readFileSync(lockFile)).digest("hex")}\n`;
}

/** Takes an installation made by hand as done, and remembers that it was looked at. */
function isInstalled() {
  const wanted = installFingerprint();
  const found = existsSync(installStamp) ? readFileSync(installStamp, "utf8") : undefined;
  if (found === wanted) return true;
  const sameKind = found === undefined || found.split("\n")[0] === wanted.split("\n")[0];
  if (!sameKind || !installedAsLocked()) return false;
  writeFileSync(installStamp, wanted);
  return true;
}

/**
 * True where someone ran npm by hand and node_modules holds what the lock file names. Packages for other systems
 * are optional and may be missing; one that is there but was not compiled is not held.
 */
function installedAsLocked() {
  const held = join(root, "node_modules", ".package-lock.json");
  if (!existsSync(held)) return false;
  const database = join(root, "node_modules", "better-sqlite3");
  if (existsSync(database) && !existsSync(join(database, "build", "Release", "better_sqlite3.node")))
    return false;
  const installed = JSON.parse(readFileSync(held, "utf8")).packages;
  /** @type {Record<string, { version?: string, optional?: boolean }>} */
  const locked = JSON.parse(readFileSync(lockFile, "utf8")).packages;
  return Object.entries(locked).every(([path, { version, optional }]) => {
    if (path === "") return true;
    return installed[path]?.version === version || (optional === true && installed[path] === undefined);
  });
}

/**
 * One hash over the names and bytes of all files a part is made from. Bytes rather than times: a fresh checkout or a
 * switched branch changes the times of files that stay the same.
 * @param {Part} part
 */
function sourceFingerprint(part) {
  const hash = createHash("sha256");
  for (const path of part.sources.flatMap((source) => filesOf(source, part.without))) {
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(root, path)))
      .update("\0");
  }
  return hash.digest("hex");
}

/**
 * @param {string} path from the top of the checkout, with forward slashes
 * @param {readonly string[]} without
 * @returns {string[]} in a fixed order
 */
function filesOf(path, without) {
  const found = statSync(join(root, path), { throwIfNoEntry: false });
  if (found === undefined || without.includes(path)) return [];
  if (!found.isDirectory()) return [path];
  const names = readdirSync(join(root, path)).sort();
  return names.flatMap((name) => filesOf(`${path}/${name}`, without));
}
