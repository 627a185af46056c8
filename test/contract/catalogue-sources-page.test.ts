/** The committed page of sources is the one the data makes. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { sourcesPage } from "../../scripts/docs-sources.ts";
import { figureKeys } from "../../src/catalogue/own-figures.ts";
import { unconfirmed } from "../../src/catalogue/records.ts";
import { sourceKeys } from "../../src/catalogue/sources.ts";

const committed = readFileSync(new URL("../../docs/sources.md", import.meta.url), "utf8");

it("docs/sources.md equals the page made from data/", () => {
  expect(committed).toBe(sourcesPage());
});

it("the page names every source and lists every unconfirmed record", () => {
  for (const key of sourceKeys()) expect(committed).toContain(`\`${key}\``);
  for (const entry of unconfirmed()) expect(committed).toContain(`| ${entry.file} | ${entry.path} |`);
});

it("the page lists every figure that a project can replace", () => {
  for (const key of figureKeys()) expect(committed).toContain(`| \`${key}\` |`);
});
