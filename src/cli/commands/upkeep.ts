/** `outerleaf upkeep`: what is done to each face, how often and when next; the same as a calendar. */
import { design } from "../../design.ts";
import { upkeepCalendar } from "../../output/calendar/upkeep-calendar.ts";
import { type UpkeepLine, upkeepSchedule } from "../../site/upkeep/schedule.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { table } from "../print/table.ts";
import type { UpkeepJson } from "../shapes/upkeep.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  job.progress(message("cli.doing.design"));
  const { demands, facade } = design(project);
  const lines = upkeepSchedule({ project, demands, facade });
  const since = project.upkeep?.since;
  const json: UpkeepJson = {
    schemaVersion: 1,
    ...(since !== undefined && { since }),
    lines: lines.map(({ why, months, last: _last, source: { kind, document }, ...line }) => ({
      ...line,
      ...(months !== undefined && { months }),
      why: say(why, reader),
      source: { kind, ...(document !== undefined && { document }) },
    })),
  };
  if (!job.options.calendar) return { exit: 0, json, text: printed(lines, reader) };
  const calendar = upkeepCalendar(lines, { project, reader });
  return calendar === undefined
    ? { refused: message("cli.refused.no-handover"), hint: message("cli.hint.handover") }
    : { exit: 0, json, text: calendar };
}

function printed(lines: readonly UpkeepLine[], reader: Reader): string {
  const word = (key: string): string => say(message(key), reader);
  const head = ["face", "task", "months", "next", "why"].map((key) => word(`upkeep.column.${key}`));
  const rows = lines.map(({ face, task, months, next, why }) => [
    face,
    word(`upkeep.task.${task}`),
    months === undefined ? "?" : String(months),
    next ?? "",
    say(why, reader),
  ]);
  return [table([head, ...rows], { right: [2] }), say(message("cli.caution"), reader), ""].join("\n");
}
