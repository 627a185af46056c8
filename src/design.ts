/**
 * The one flow: a project becomes a set-out, proven facade. Everything that designs calls this function; it is pure,
 * so the same project gives the same design, byte for byte.
 */
import { type Demands, demandsOf } from "./codes/demands.ts";
import { byWeight, type Finding } from "./findings/finding.ts";
import { readDocument, readProject } from "./project/read.ts";
import type { ReadMemo } from "./project/read-memo.ts";
import type { Project } from "./project/schema/project.ts";
import { prove } from "./proof/index.ts";
import type { LightInput } from "./proof/light/input.ts";
import type { ProofMemo } from "./proof/proof-memo.ts";
import type { Facade } from "./setout/facade.ts";
import type { FaceMemo } from "./setout/memo.ts";
import { setOut } from "./setout/set-out.ts";
import { stepChoices } from "./setout/step-choices.ts";

export interface Design {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
  /** Of setting-out and proof, what is to be settled first in front. */
  readonly findings: readonly Finding[];
}

/** What is kept from one design to the next; a design is the same without any of it. */
export interface Beside {
  /** Faces that an edit leaves alone are not laid out again. */
  readonly faces?: FaceMemo;
  /** The sun of the place; a year of weather here takes the place of clear skies. */
  readonly light?: LightInput;
  /** What was found on faces that `faces` hands out again. */
  readonly proof?: ProofMemo;
  /** Parts of documents that were read before. */
  readonly read?: ReadMemo;
  /** The facade is wanted for the next frame, and proven elsewhere: it comes without what its findings offer. */
  readonly toDraw?: boolean;
}

/** A design that is not proven yet. */
export type Laid = Omit<Design, "findings">;

export function design(project: Project, beside: Beside = {}): Design {
  return proven(lay(project, beside), beside);
}

function lay(project: Project, { faces: memo, toDraw = false }: Beside): Laid {
  const gather = (): Demands => demandsOf(project);
  const demands = memo ? memo.demands(project, gather) : gather();
  return { project, demands, facade: setOut(project, demands, { memo, toDraw }) };
}

/** The second half of a design, which may come a little later: a facade is drawn before it is proven. */
export function proven(laid: Laid, { light, proof }: Beside = {}): Design {
  const found = prove({ ...laid, light }, proof);
  return { ...laid, findings: [...laid.facade.findings, ...found].sort(byWeight) };
}

/** A design as it is handed out: where zones stand apart, with what would bring them into one plane. Only where a step fails does it take longer. */
export function withStepChoices(done: Design): Design {
  const offered = stepChoices(done);
  if (offered.size === 0) return done;
  const told = (findings: readonly Finding[]): Finding[] => findings.map((one) => offered.get(one) ?? one);
  return {
    ...done,
    facade: { ...done.facade, findings: told(done.facade.findings) },
    findings: told(done.findings),
  };
}

interface FileRead {
  readonly name: string;
  /** The JSON as it stands, brought up to the present version: what edits are made to. */
  readonly document: unknown;
  /** Of reading the file: what hinders nothing. */
  readonly readFindings: readonly Finding[];
}

interface FileRefused {
  readonly kind: "refused";
  readonly name: string;
  readonly findings: readonly Finding[];
}

/** What comes of a project file: a design, or why the file is refused; plain JSON either way. */
export type FileDesign = (FileRead & { readonly kind: "designed"; readonly design: Design }) | FileRefused;

/** The same before it is proven. */
export type FileLaid = (FileRead & { readonly kind: "laid"; readonly laid: Laid }) | FileRefused;

/** A project file by the name that findings call it by: its text, or its JSON as after an edit. */
export type ProjectFile =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly document: unknown };

/** Reads and designs a project file. */
export function designFile(file: ProjectFile, beside: Beside = {}): FileDesign {
  const made = layFile(file, beside);
  if (made.kind === "refused") return made;
  const { laid, ...read } = made;
  return { ...read, kind: "designed", design: proven(laid, beside) };
}

/** Reads a project file and sets it out. */
export function layFile(file: ProjectFile, beside: Beside = {}): FileLaid {
  const { name } = file;
  const read = "text" in file ? readProject(file.text, name) : readDocument(file.document, name, beside.read);
  if (!read.ok) return { kind: "refused", name, findings: read.findings };
  const { document, project, findings: readFindings } = read;
  return { kind: "laid", name, document, laid: lay(project, beside), readFindings };
}
