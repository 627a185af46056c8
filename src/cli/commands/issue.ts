/** `outerleaf issue`: writes the documents of a project into a folder, with their names and hashes. */
import { join } from "node:path";
import { MANIFEST } from "../../output/issue/manifest.ts";
import { findingJson } from "../../output/json/finding.ts";
import { countLine, unsettled } from "../../output/report/findings.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { exitOf } from "../exit.ts";
import { issue } from "../issue/documents.ts";
import { freeze } from "../issue/freeze.ts";
import { recorded } from "../issue/record.ts";
import { workThrough } from "../issue/work.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import type { IssueJson } from "../shapes/small.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  const folder = job.options.to ?? "";
  const drawn = workThrough(job, opened);
  const worked = recorded(job, drawn);
  if (isRefusal(worked)) return worked;
  const manifest = await issue(job, worked, folder);
  if (isRefusal(manifest)) return manifest;
  const frozen = await freeze(job, { worked, folder, manifest });
  const options = { reader, waivers: project.waivers };
  const json: IssueJson = {
    schemaVersion: 1,
    folder,
    manifest: join(folder, MANIFEST),
    documents: [...manifest.documents],
    ...(frozen.number === undefined ? {} : { frozen: frozen.number }),
    findings: unsettled(worked.findings).map((finding) => findingJson(finding, options)),
  };
  return {
    exit: exitOf(worked.findings, project.waivers),
    json,
    text: [
      say(message("cli.issue.done", { count: manifest.documents.length, folder }), reader),
      ...manifest.documents.map(({ name, sha256 }) => `  ${sha256.slice(0, 12)}  ${name}`),
      ...(frozen.says ? [say(frozen.says, reader)] : []),
      countLine(worked.findings, options),
      "",
    ].join("\n"),
  };
}
