/** Opens the project that a command works on: reads it, applies the edit, holds it to the schema. */
import { basename } from "node:path";
import type { Finding } from "../findings/finding.ts";
import { applyPatch } from "../project/edit.ts";
import { parseJson } from "../project/json.ts";
import { readDocument, readProject } from "../project/read.ts";
import type { Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import type { Reader } from "../text/say.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import { type FileText, readText } from "./files.ts";
import { type Job, readerOf } from "./job.ts";

export interface OpenedProject {
  readonly file: FileText;
  /** The patch that was applied. */
  readonly edit?: FileText;
  /** The JSON as it stands, edit applied. */
  readonly document: unknown;
  /** Whether the document has the record of the revision that is being issued. */
  readonly recorded?: true;
  readonly project: Project;
  readonly reader: Reader;
  /** What deserves attention in the file and hinders nothing. */
  readonly findings: readonly Finding[];
}

/** @param name of the file; the command's first word unless told */
export async function openProject(job: Job, name = job.words[0] ?? ""): Promise<OpenedProject | Refusal> {
  const file = await readText(name, job.io.cwd);
  if (isRefusal(file)) return file;
  const shortName = basename(file.name);
  const read = readProject(file.text, shortName);
  // A file that cannot be used as it stands may be mended by the edit, as long as it is JSON.
  const editName = job.options.edit;
  if (editName === undefined) {
    if (!read.ok) return unusable(file.name, read.findings);
    const { document, project, findings } = read;
    return { file, document, project, findings, reader: readerOf(project, job) };
  }
  const parsed = parseJson(file.text.replace(/^\uFEFF/, ""));
  if (!parsed.ok) return unusable(file.name, read.findings);
  const edited = await editDocument(job, read.ok ? read.document : parsed.value);
  if (isRefusal(edited)) return edited;
  const again = readDocument(edited.document, shortName);
  if (!again.ok) return unusable(file.name, again.findings);
  const { document, project, findings } = again;
  return { file, edit: edited.edit, document, project, findings, reader: readerOf(project, job) };
}

/** Applies the patch named by `--edit` to a document. */
export async function editDocument(
  job: Job,
  document: unknown,
): Promise<{ readonly document: unknown; readonly edit: FileText } | Refusal> {
  const edit = await readText(job.options.edit ?? "", job.io.cwd);
  if (isRefusal(edit)) return edit;
  const patch = parseJson(edit.text.replace(/^\uFEFF/, ""));
  if (!patch.ok) {
    const [fault] = patch.faults;
    return {
      refused: message("cli.refused.edit-not-json", {
        file: edit.name,
        line: fault?.line ?? 1,
        column: fault?.column ?? 1,
      }),
      hint: message("project.hint.patch"),
    };
  }
  const patched = applyPatch(document, patch.value);
  if (patched.ok) return { document: patched.document, edit };
  return {
    refused: message("cli.refused.edit", { file: edit.name }),
    findings: patched.findings,
  };
}

function unusable(name: string, findings: readonly Finding[]): Refusal {
  const faults = findings.filter(({ outcome }) => outcome === "fail").length;
  return { refused: message("cli.refused.project", { file: name, faults }), findings };
}
