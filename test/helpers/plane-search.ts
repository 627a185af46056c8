/** Examples with a change or two, searched for their planes; and what an offered edit comes to. */
import { readFileSync } from "node:fs";
import { demandsOf } from "../../src/codes/demands.ts";
import { design } from "../../src/design.ts";
import type { PatchOperation } from "../../src/findings/finding.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project, ProjectDocument } from "../../src/project/schema/project.ts";
import {
  type PlaneCombination,
  type PlaneSearchRequest,
  type PlaneSearchResult,
  searchPlanes,
} from "../../src/setout/plane-search/index.ts";

const texts = new Map<string, string>();

/** A copy of an example that may be changed. */
export function exampleDocument(name = "atelier-bouleau"): ProjectDocument {
  const text = texts.get(name) ?? readFileSync(`examples/${name}.outerleaf.json`, "utf8");
  texts.set(name, text);
  return JSON.parse(text) as ProjectDocument;
}

export function projectOf(document: unknown): Project {
  const result = readDocument(document, "plane search");
  if (!result.ok) throw new Error(`the file does not read: ${JSON.stringify(result.findings[0])}`);
  return result.project;
}

/** Where boards and sheets of the demo meet. */
export const FRONT = [
  { face: "front", zone: "boards" },
  { face: "front", zone: "sheets" },
] as const;

/** More than any search of the tests finds. */
export const ALL = { passing: 1e6, failing: 1e6 } as const;

export function search(
  document: unknown,
  options: Partial<Omit<PlaneSearchRequest, "project" | "demands">> = {},
): PlaneSearchResult {
  const project = projectOf(document);
  return searchPlanes({ project, demands: demandsOf(project), zones: FRONT, ...options });
}

/** `b25x64+2|b38x64+` and the thicknesses of the claddings. */
export function nameOf({ buildUps, claddings }: PlaneCombination): string {
  const stacks = buildUps.map(({ battens, packers }) => `${battens.join("+")}+${packers.join("+")}`);
  return `${stacks.join("|")} ${claddings.map(({ thickness }) => thickness).join("|")}`;
}

/** The step and screw-length findings of the project with an edit applied; throws where the edit or the file is refused. */
export function findingsAfter(document: unknown, edit: readonly PatchOperation[]) {
  const patched = applyPatch(document, edit);
  if (!patched.ok) throw new Error(`refused: ${JSON.stringify(patched.findings[0])}`);
  const { facade } = design(projectOf(patched.document));
  const of = (code: string) => facade.findings.filter((one) => one.code === code);
  return { facade, steps: of("S007"), bites: of("S016"), corners: of("S014") };
}
