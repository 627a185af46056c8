// `npm run notices`: writes THIRD-PARTY-NOTICES.md from the licence files of the libraries that the program is made with.

import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./processes.mjs";
import { giveUp, say } from "./say.mjs";

const file = join(root, "THIRD-PARTY-NOTICES.md");

/** Where an author's own word for the licence could be taken for another one. */
const names = new Map([["clipper-lib", "BSL-1.0"]]);

/**
 * @typedef {object} Library
 * @property {string} name
 * @property {string} version
 * @property {string} licence as its author names it
 * @property {string} text the licence in full
 */

/**
 * The libraries the program is made with, from the lock file: what is used at work and not only in development.
 * @returns {Library[]} by name
 */
function libraries() {
  /** @type {Record<string, { version: string, dev?: boolean, optional?: boolean }>} */
  const locked = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;
  return Object.entries(locked)
    .filter(([path, { dev }]) => path !== "" && dev !== true)
    .filter(([path, { optional }]) => optional !== true || existsSync(join(root, path)))
    .map(([path, { version }]) => {
      const { name, license } = JSON.parse(readFileSync(join(root, path, "package.json"), "utf8"));
      return { name, version, licence: names.get(name) ?? String(license), text: licenceText(path, name) };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/**
 * The licence a package carries; for one that carries none, the text we keep in scripts/licences.
 * @param {string} path
 * @param {string} name
 */
function licenceText(path, name) {
  const carried = readdirSync(join(root, path)).filter((entry) =>
    /^(licen[cs]e|notice|copying)/i.test(entry),
  );
  const kept = join(root, "scripts", "licences", `${name.replace("/", "__")}.txt`);
  const sources = carried.length > 0 ? carried.sort().map((entry) => join(root, path, entry)) : [kept];
  if (!sources.every((source) => existsSync(source))) {
    giveUp(
      `${name} carries no licence file; put its licence into scripts/licences/${name.replace("/", "__")}.txt.`,
    );
  }
  const texts = sources.map((source) => readFileSync(source, "utf8"));
  return texts
    .join("\n\n")
    .replace(/\r\n?/g, "\n")
    .replace(/[ \t]+$/gm, "")
    .trim();
}

/** The whole page; the same bytes for the same libraries. */
export function notices() {
  const found = libraries();
  const head = [
    "# Third-party notices",
    "",
    "Outerleaf is made with these libraries and this typeface. Each keeps its own licence, given below in full.",
    "This page is made by `npm run notices`.",
    "",
    "| name | version | licence |",
    "| --- | --- | --- |",
    ...found.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`),
  ];
  const texts = found.map(
    ({ name, version, text }) => `\n## ${name} ${version}\n\n\`\`\`text\n${text}\n\`\`\``,
  );
  return `${[...head, ...texts].join("\n")}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  writeFileSync(file, notices());
  say("Wrote THIRD-PARTY-NOTICES.md.");
}
