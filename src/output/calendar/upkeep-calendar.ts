/** The upkeep of a facade as a calendar: one event for what is done on several faces on the same days. */
import { faceCode } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import { heading } from "../../scene/views/extent.ts";
import type { UpkeepLine } from "../../site/upkeep/schedule.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { grouped } from "../drawings/grouped.ts";
import { type CalendarEvent, icalendar } from "./icalendar.ts";

/** Undefined where nothing has a day: the project does not tell when the facade was handed over. */
export function upkeepCalendar(
  lines: readonly UpkeepLine[],
  { project, reader }: { readonly project: Project; readonly reader: Reader },
): string | undefined {
  const dated = lines.filter(({ next, months }) => next !== undefined && months !== undefined);
  const groups = grouped(dated, ({ task, next, months, cladding }) =>
    [task, next, months, cladding ?? ""].join(" "),
  );
  const stamp = project.upkeep?.since ?? dated.map(({ last }) => last ?? "").sort()[0];
  if (groups.size === 0 || stamp === undefined) return undefined;
  const stem = slug(project.title);
  const events = [...groups.values()].map((group): CalendarEvent => {
    const [{ task, cladding, next = "", months = 1, why }] = group as [UpkeepLine];
    const faces = group.map(({ face }) => heading(face));
    const codes = group.map(({ face }) => codeOf(project, face));
    return {
      uid: `${[stem, task, cladding ?? "", ...codes].filter((part) => part !== "").join("-")}@outerleaf.invalid`,
      day: next,
      months,
      summary: say(message(`upkeep.summary.${task}`, { title: project.title }), reader),
      description: [
        say(message("upkeep.faces", { faces }), reader),
        say(message(`upkeep.do.${task}`), reader),
        say(why, reader),
        say(message("drawing.owner.caution"), reader),
      ].join("\n"),
    };
  });
  return icalendar(events, {
    name: say(message("upkeep.calendar", { title: project.title }), reader),
    language: reader.language,
    stamp,
  });
}

function codeOf(project: Project, id: string): string {
  const face = project.faces.find((one) => one.id === id);
  return face ? faceCode(face) : id;
}

function slug(title: string): string {
  return title
    .normalize("NFD")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "");
}
