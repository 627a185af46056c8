/** `outerleaf check`: whether a project file can be designed from, and everything that stands in the way. */
import { basename } from "node:path";
import type { Finding } from "../../findings/finding.ts";
import { findingJson } from "../../output/json/finding.ts";
import { printFindings } from "../../output/report/findings.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  const file = job.words[0] ?? "";
  if (!isRefusal(opened)) {
    const { reader, findings, project } = opened;
    const key = findings.length === 0 ? "cli.check.fine" : "cli.check.usable";
    const says = message(key, { file: basename(file), title: project.title, count: findings.length });
    return { exit: 0, ...told({ file, usable: true, findings, reader, says: say(says, reader) }) };
  }
  // A file that cannot even be read has no findings, and is refused as everywhere.
  const { findings = [], refused } = opened;
  if (findings.length === 0) return opened;
  const { reader } = job;
  return { exit: 2, ...told({ file, usable: false, findings, reader, says: say(refused, reader) }) };
}

function told({
  file,
  usable,
  findings,
  reader,
  says,
}: {
  file: string;
  usable: boolean;
  findings: readonly Finding[];
  reader: Reader;
  says: string;
}): { json: unknown; text: string } {
  return {
    json: {
      schemaVersion: 1,
      file,
      usable,
      findings: findings.map((finding) => findingJson(finding, { reader })),
    },
    text: `${says}\n${printFindings(findings, { reader })}`,
  };
}
