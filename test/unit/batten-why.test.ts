/** Why a batten stands where it does, and what was passed over for it. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readProject } from "../../src/project/read.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";

it("a batten tells the lighter reason beside it, by how far and on which side", () => {
  const read = readProject(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"), "demo");
  if (!read.ok) throw new Error("the demo cannot be read");
  const battens = design(read.project).facade.faces.flatMap(({ pieces }) =>
    pieces.filter(({ kind }) => kind === "batten"),
  );
  const told = battens.flatMap(({ why }) => (why.runnerUp ? [say(why.runnerUp, ENGLISH_MM)] : []));
  expect(told.length).toBeGreaterThan(5);
  expect(told.length).toBeLessThan(battens.length);
  for (const words of told) expect(words).toMatch(/^Passed over, [\d. ]+ mm further (?:left|right): .+\.$/);
  expect(told.some((words) => words.endsWith("stands on a stud."))).toBe(true);
});
