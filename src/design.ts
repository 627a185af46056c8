/**
 * The one flow: a project becomes a set-out, proven facade. Everything that designs calls this function; it is pure,
 * so the same project gives the same design, byte for byte.
 */
import { type Demands, demandsOf } from "./codes/demands.ts";
import { byWeight, type Finding } from "./findings/finding.ts";
import { readDocument, readProject } from "./project/read.ts";
import type { Project } from "./project/schema/project.ts";
import { prove } from "./proof/index.ts";
import type { LightInput } from "./proof/light/input.ts";
import type { ProofMemo } from "./proof/proof-memo.ts";
import type { Facade } from "./setout/facade.ts";
import type { FaceMemo } from "./setout/memo.ts";
import { setOut } from "./setout/set-out.ts";

export interface Design {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
  /** Of setting-out and proof, what is to be settled first in front. */
  readonly findings: readonly Finding[];
}

/**
 * With a memo, faces that an edit leaves alone are not laid out again; the design is the same without it. The same goes for
 * the sun in `light`, but a year of weather there takes the place of clear skies. What `proof` remembers is of faces that
 * `memo` hands out again.
 */
export function design(project: Project, memo?: FaceMemo, light?: LightInput, proof?: ProofMemo): Design {
  const demands = demandsOf(project);
  const facade = setOut(project, demands, memo);
  const findings = [...facade.findings, ...prove({ project, facade, demands, light }, proof)].sort(byWeight);
  return { project, demands, facade, findings };
}

/** What comes of a project file: a design, or why the file is refused; plain JSON either way. */
export type FileDesign =
  | {
      readonly kind: "designed";
      readonly name: string;
      /** The JSON as it stands, brought up to the present version: what edits are made to. */
      readonly document: unknown;
      readonly design: Design;
      /** Of reading the file: what hinders nothing. */
      readonly readFindings: readonly Finding[];
    }
  | { readonly kind: "refused"; readonly name: string; readonly findings: readonly Finding[] };

/** A project file by the name that findings call it by: its text, or its JSON as after an edit. */
export type ProjectFile =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly document: unknown };

/** Reads and designs a project file. */
export function designFile(
  file: ProjectFile,
  memo?: FaceMemo,
  light?: LightInput,
  proof?: ProofMemo,
): FileDesign {
  const { name } = file;
  const read = "text" in file ? readProject(file.text, name) : readDocument(file.document, name);
  if (!read.ok) return { kind: "refused", name, findings: read.findings };
  const { document, project, findings: readFindings } = read;
  return { kind: "designed", name, document, design: design(project, memo, light, proof), readFindings };
}
