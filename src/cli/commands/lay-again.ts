/** `outerleaf lay-again`: the cladding laid again for what was measured, at the fewest re-cuts; what becomes of each piece. */
import { design } from "../../design.ts";
import { newlyFailing } from "../../findings/newly.ts";
import { findingJson } from "../../output/json/finding.ts";
import { applyPatch } from "../../project/edit.ts";
import { takeLaid } from "../../project/editing/as-built.ts";
import { readDocument } from "../../project/read.ts";
import type { Project } from "../../project/schema/project.ts";
import { choicesAt } from "../../site/as-built/choices.ts";
import { asBuiltFindings } from "../../site/as-built/findings.ts";
import { layAgain } from "../../site/as-built/lay-again.ts";
import { type Measured, measuredOf } from "../../site/as-built/measured.ts";
import { takenFaces } from "../../site/as-built/taken.ts";
import { foldJournal } from "../../site/journal/fold.ts";
import { message } from "../../text/message.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { exitOf } from "../exit.ts";
import type { Job } from "../job.ts";
import { readJournal } from "../journal-file.ts";
import { layAgainJson } from "../json/lay-again.ts";
import { type OpenedProject, openProject } from "../open-project.ts";
import { printLayAgain } from "../print/lay-again.ts";
import { writeProject } from "../write-project.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, document, reader } = opened;
  const { journal, face, steps, to } = job.options;
  const entries = journal === undefined ? [] : await readJournal(journal, job.io.cwd);
  if (isRefusal(entries)) return entries;
  const told = foldJournal(entries);
  const measured = measuredOf(project, told);
  const wanted = facesMeasured(project, measured).filter((id) => face === undefined || id === face);
  if (wanted.length === 0) {
    return { refused: message("cli.refused.not-measured"), hint: message("cli.hint.measured") };
  }
  job.progress(message("cli.doing.lay-again"));
  const before = design(project);
  const { demands, facade } = before;
  const faces = facade.faces
    .filter(({ id }) => wanted.includes(id))
    .map((layout) => {
      const asked = { project, demands, face: layout, measured, told };
      return {
        laid: layAgain(asked, steps === undefined ? {} : { steps }),
        choices: layout.openings.flatMap(({ id }) => choicesAt(asked, id)),
      };
    });
  const laid = faces.map((one) => one.laid);
  const change = takeLaid(
    { project, document },
    takenFaces(
      project,
      measured,
      laid.flatMap((one) => (one.kind === "found" ? [one] : [])),
    ),
  );
  const taken = afterwards(opened, change?.operations ?? []);
  const written = to === undefined ? undefined : await writeProject(job, to, taken.document);
  if (written && isRefusal(written)) return written;
  const fresh = newlyFailing(before.findings, taken.project ? design(taken.project).findings : []);
  const findings = asBuiltFindings(project, measured, laid);
  const { waivers } = project;
  const facts = { title: project.title, faces, findings, fresh, waivers };
  return {
    exit: exitOf([...findings, ...fresh], waivers),
    json: {
      ...layAgainJson(facts),
      edit: (change?.operations ?? []).map((one) => ({ ...one })),
      ...(written && { written }),
      newlyFailing: fresh.map((one) => findingJson(one, { reader, waivers })),
      findings: findings.map((one) => findingJson(one, { reader, waivers })),
    },
    text: printLayAgain(facts, { reader, written }),
  };
}

function facesMeasured({ faces }: Project, { openings, ends }: Measured): string[] {
  const named = new Set([...openings, ...ends].map(({ face }) => face));
  return faces.map(({ id }) => id).filter((id) => named.has(id));
}

/** The project with the layout taken; the change is ours, so it can be read again. */
function afterwards(
  { document, file }: OpenedProject,
  operations: Parameters<typeof applyPatch>[1],
): { readonly document: unknown; readonly project?: Project } {
  const patched = applyPatch(document, operations);
  const read = patched.ok ? readDocument(patched.document, file.name) : undefined;
  return read?.ok ? { document: read.document, project: read.project } : { document };
}
