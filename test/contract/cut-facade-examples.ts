/** The example buildings, set out and cut once: what cutting, take-off and their files are held to. */
import { readdirSync, readFileSync } from "node:fs";
import { demandsOf } from "../../src/codes/demands.ts";
import { type CutOutcome, cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { readProject } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade } from "../../src/setout/facade.ts";
import { setOut } from "../../src/setout/set-out.ts";
import type { Reader } from "../../src/text/say.ts";

const folder = new URL("../../examples/", import.meta.url);
const END = ".outerleaf.json";

export const exampleNames = readdirSync(folder)
  .filter((name) => name.endsWith(END))
  .map((name) => name.slice(0, -END.length));

export interface Example {
  readonly project: Project;
  readonly facade: Facade;
  readonly cut: CutOutcome;
  readonly reader: Reader;
}

const kept = new Map<string, Example>();

export function example(name: string): Example {
  const known = kept.get(name);
  if (known) return known;
  const result = readProject(readFileSync(new URL(`${name}${END}`, folder), "utf8"), name);
  if (!result.ok) throw new Error(`${name} cannot be read`);
  const { project } = result;
  const { language, units, denominator } = project.display;
  const facade = setOut(project, demandsOf(project));
  const made: Example = {
    project,
    facade,
    cut: cutFacade(project, facade),
    reader: { language, units, denominator },
  };
  kept.set(name, made);
  return made;
}
