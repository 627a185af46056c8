// Finds a browser for the tests that need one, and installs Debian's where that can be done unasked.

import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./processes.mjs";
import { say } from "./say.mjs";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

const macApplications = ["Chromium", "Google Chrome"].map(
  (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
);

const windowsFolders = ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"];
const windowsPrograms = ["Chromium\\Application\\chrome.exe", "Google\\Chrome\\Application\\chrome.exe"];

/**
 * The program of a Chromium-like browser: the one CHROMIUM_PATH names, else the first found where each system keeps them.
 * @returns {string | undefined}
 */
export function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && named !== "") return canRun(named) ? named : undefined;
  return places().find(canRun);
}

/**
 * Finds a browser, installing Debian's where we may.
 * @returns {Promise<{ path: string } | { path: undefined, reason: string }>} the reason is a sentence for the user
 */
export async function ensureChromium() {
  const missing = [];
  if (findChromium() === undefined) missing.push("chromium");
  if (onPath("pdftotext") === undefined) missing.push("poppler-utils");
  const mayInstall =
    existsSync("/etc/debian_version") && process.getuid?.() === 0 && !process.env.CHROMIUM_PATH;
  if (missing.length > 0 && mayInstall) await installFromDebian(missing);
  const path = findChromium();
  if (path !== undefined) return { path };
  if (process.env.CHROMIUM_PATH) {
    return {
      path,
      reason: `CHROMIUM_PATH names ${process.env.CHROMIUM_PATH}, which is no program that can be run`,
    };
  }
  return {
    path,
    reason: mayInstall
      ? "Chromium is missing and could not be installed from Debian's packages"
      : "Chromium was not found; install it, or name its program in CHROMIUM_PATH",
  };
}

/** @param {readonly string[]} packages */
async function installFromDebian(packages) {
  say(`Installing ${packages.join(" and ")} from Debian's packages (once) …`);
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  const steps = [
    ["update", "-qq"],
    ["install", "-y", "-qq", "--no-install-recommends", ...packages],
  ];
  for (const step of steps) {
    const { code, output } = await run("apt-get", step, { keep: true, env });
    if (code !== 0) {
      say(output.trimEnd());
      return;
    }
  }
}

/** @returns {string[]} */
function places() {
  if (process.platform === "darwin") return macApplications;
  if (process.platform === "win32") {
    const folders = windowsFolders.flatMap((name) => process.env[name] ?? []);
    return folders.flatMap((folder) => windowsPrograms.map((program) => join(folder, program)));
  }
  return names.flatMap((name) => onPath(name) ?? []);
}

/**
 * @param {string} name
 * @returns {string | undefined}
 */
function onPath(name) {
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return folders.map((folder) => join(folder, name)).find(canRun);
}

/** @param {string} path */
function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
