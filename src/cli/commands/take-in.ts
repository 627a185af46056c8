/** `outerleaf take-in`: a face from a drawing or walls from a model, into a project or to begin one; a pile or readings from a table. Tells what changes; writes it where `--to` says. */
import { extname } from "node:path";
import { findingJson } from "../../output/json/finding.ts";
import { printFindings } from "../../output/report/findings.ts";
import type { Taken } from "../../project/intake/taken.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import { type FileText, readText } from "../files.ts";
import type { Job } from "../job.ts";
import { type OpenedProject, openProject } from "../open-project.ts";
import type { TakeInJson } from "../shapes/take-in.ts";
import { writeProject } from "../write-project.ts";

type Take = (
  job: Job,
  file: FileText,
  into: OpenedProject | undefined,
) => Taken | Refusal | Promise<Taken | Refusal>;

/** By what the file's name ends in. */
const TAKES: Readonly<Record<string, () => Promise<Take>>> = {
  ".csv": async () => takeTable,
  ".xlsx": async () => takeTable,
  ".ifc": async () => (await import("../take-in/model.ts")).takeModel,
  ".dxf": async () => (await import("../take-in/drawing.ts")).takeDrawing,
};

/** By what `--as` says that it is; boards where it says nothing. */
async function takeTable(
  job: Job,
  file: FileText,
  into: OpenedProject | undefined,
): Promise<Taken | Refusal> {
  if (!into) return { refused: message("cli.refused.into-needed"), hint: message("cli.hint.into") };
  const take =
    job.options.as === "readings"
      ? (await import("../take-in/readings.ts")).takeSurvey
      : (await import("../take-in/pile.ts")).takePile;
  return take(job, file, into);
}

export async function command(job: Job): Promise<Answer> {
  const { io, options, words } = job;
  const name = words[0] ?? "";
  const take = TAKES[extname(name).toLowerCase()];
  if (!take) {
    return {
      refused: message("cli.refused.take-in-kind", { file: name }),
      hint: message("cli.hint.take-in-kinds", { kinds: Object.keys(TAKES) }),
    };
  }
  const file = await readText(name, io.cwd);
  if (isRefusal(file)) return file;
  const into = options.into === undefined ? undefined : await openProject(job, options.into);
  if (into && isRefusal(into)) return into;
  const taken = await (await take())(job, file, into);
  if ("refused" in taken) return taken;
  if (!taken.ok) {
    const faults = taken.findings.filter(({ outcome }) => outcome === "fail").length;
    return { refused: message("cli.refused.take-in", { file: name, faults }), findings: taken.findings };
  }
  const written = options.to === undefined ? undefined : await writeProject(job, options.to, taken.document);
  if (written && isRefusal(written)) return written;
  const reader = into?.reader ?? job.reader;
  const changes = taken.tells.map((tell) => say(tell, reader));
  const json: TakeInJson = {
    schemaVersion: 1,
    file: name,
    ...(options.into !== undefined && { into: options.into }),
    ...(written && { written }),
    changes,
    findings: taken.findings.map((finding) => findingJson(finding, { reader })),
  };
  const done = written
    ? message("cli.take-in.done", { file: written.file })
    : message("cli.take-in.not-written");
  return {
    exit: 0,
    json,
    text: [
      ...changes.map((change) => `  ${change}`),
      ...(taken.findings.length > 0 ? [printFindings(taken.findings, { reader }).trimEnd()] : []),
      say(done, reader),
      "",
    ].join("\n"),
  };
}
