/** `outerleaf prove`: every finding of setting-out and proof, what is to be settled first in front. */

import { findingJson } from "../../output/json/finding.ts";
import { countLine, printFindings, unsettled } from "../../output/report/findings.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { designed } from "../designed.ts";
import { exitOf } from "../exit.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { weatherInput } from "../weather.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  const light = await weatherInput(job, project);
  if (isRefusal(light)) return light;
  job.progress(message("cli.doing.design"));
  const { findings } = designed(project, light);
  const options = { reader, waivers: project.waivers };
  return {
    exit: exitOf(findings, project.waivers),
    json: { schemaVersion: 1, findings: findings.map((finding) => findingJson(finding, options)) },
    text: [
      printFindings(unsettled(findings), options) + countLine(findings, options),
      say(message("cli.caution"), reader),
      "",
    ].join("\n"),
  };
}
