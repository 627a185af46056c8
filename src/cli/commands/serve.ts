/** `outerleaf serve`: the page of one project on this machine, until it is stopped. */

import { printJson } from "../../output/json/print.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { documentsFolder } from "../documents-folder.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { servePage } from "../serving.ts";

export async function command(job: Job): Promise<Answer> {
  const { io, options } = job;
  const file = job.words[0] ?? "";
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { reader } = opened;
  const page = await servePage(job, { file, documents: documentsFolder(file), reader });
  if (isRefusal(page)) return page;
  job.clear();
  if (options.json) io.out(printJson({ schemaVersion: 1, address: page.url, file }));
  else io.out([...page.says, message("cli.serve.stop")].map((one) => `${say(one, reader)}\n`).join(""));
  await page.untilStopped;
  io.err(`${say(message("cli.serve.stopped"), reader)}\n`);
  return { ended: 0 };
}
