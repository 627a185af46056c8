/** `outerleaf rips`: the widths to rip the pile to, weighed by the rod and by the pile. */
import { ripChoices, USUAL_RIPS } from "../../cutting/facade/rip-choice.ts";
import { design } from "../../design.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { ripsJson } from "../json/rips.ts";
import { openProject } from "../open-project.ts";
import { printRips } from "../print/rips.ts";

export async function command(job: Job): Promise<Answer> {
  const { narrowest = USUAL_RIPS.from, widest = USUAL_RIPS.to } = job.options;
  if (narrowest > widest) {
    return {
      refused: message("cli.refused.widths-crossed", {
        narrowest: String(narrowest),
        widest: String(widest),
      }),
      hint: message("cli.hint.widths-crossed"),
    };
  }
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  job.progress(message("cli.doing.rips"));
  const { demands, facade } = design(project);
  const found = ripChoices(project, { demands, facade }, { from: narrowest, to: widest });
  return {
    exit: found.every(({ choices }) => choices.length > 0) ? 0 : 1,
    json: ripsJson(found),
    text: [
      say(message("cli.rips.title", { title: project.title }), reader),
      "",
      ...(found.length === 0 ? [say(message("cli.rips.none"), reader), ""] : []),
      ...found.map((one) => printRips(one, reader)),
    ].join("\n"),
  };
}
