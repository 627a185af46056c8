/** The committed pages of equations are what the code makes, and leave none out. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { equationPages } from "../../scripts/docs-equations.ts";
import { EQUATIONS } from "../../src/equations/index.ts";

const root = new URL("../../", import.meta.url);
const folder = new URL("docs/equations/", root);
const committed = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
);

it("docs/equations holds the pages that the code makes, and no other", () => {
  expect(committed).toEqual(equationPages());
});

it("each equation has one section, with every input", () => {
  const { "README.md": index = "", ...pages } = committed;
  const text = Object.values(pages).join("\n");
  for (const { name, inputs } of EQUATIONS) {
    expect({ name, sections: text.split(`\n## ${name}\n`).length - 1 }).toEqual({ name, sections: 1 });
    expect(index).toContain(`#${name})`);
    const own = text.slice(text.indexOf(`\n## ${name}\n`)).split("\n## ")[1] ?? "";
    for (const { key } of inputs) expect(own).toContain(`| \`${key}\` |`);
  }
});

it("each check that a page names is there", () => {
  const named = Object.values(committed).flatMap((text) => text.match(/test\/[\w/.-]+\.ts/g) ?? []);
  expect(named.length).toBeGreaterThan(EQUATIONS.length / 2);
  for (const path of named)
    expect({ path, there: existsSync(new URL(path, root)) }).toEqual({ path, there: true });
});
