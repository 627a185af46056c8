/** The five example buildings give what the rules on air, water, heat and durability ask to know, and break none of them. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { blocks } from "../../src/findings/finding.ts";
import { readProject } from "../../src/project/read.ts";

const OWN = /^P0(3\d|4[0-3])$/;

it.each(["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"])("%s", (name) => {
  const result = readProject(readFileSync(`examples/${name}.outerleaf.json`, "utf8"), name);
  if (!result.ok) throw new Error(`${name} does not read`);
  const own = design(result.project).findings.filter(({ code }) => OWN.test(code));
  expect(own.filter(blocks).map(({ code, where, says }) => [code, where, says.key])).toEqual([]);
  // Every rule speaks of the demo; heat lost by screws only where some pass insulation.
  if (name === "atelier-bouleau") expect(new Set(own.map(({ code }) => code)).size).toBe(14);
});
