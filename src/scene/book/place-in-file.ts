/** Places of the project file in words: a sheet's reader has the facade before them, never the file. */
import { isGroup, parsePointer, valueAt } from "../../project/pointer.ts";
import type { Project } from "../../project/schema/project.ts";
import { LANGUAGES, template } from "../../text/catalogue.ts";
import { type Message, message } from "../../text/message.ts";

/** Lists whose entries are told one by one, by their ids or, where they have none, as they are counted from 1. */
const LISTS: readonly string[] = [
  "faces",
  "openings",
  "penetrations",
  "lines",
  "zones",
  "claddings",
  "buildUps",
  "layers",
  "corners",
  "rods",
  "sheets",
  "battens",
  "screws",
  "boards",
  "lots",
];

/**
 * What a JSON Pointer (RFC 6901) into the project leads to: `cladding B: finish`. A field that has no word of its own is told by
 * the nearest group round it that has one, and where none has, by the thing it belongs to.
 * @param pointer a text that is none is handed back as it stands
 */
export function placeInFile(pointer: string, project: Project): Message {
  const steps = parsePointer(pointer);
  if (steps === undefined) return message("drawing.plain", { value: pointer });
  const things: Message[] = [];
  let fields: string[] = [];
  for (const [at, step] of steps.entries()) {
    const list = steps[at - 1];
    if (list !== undefined && LISTS.includes(list) && Array.isArray(valueAt(project, steps.slice(0, at)))) {
      const entry = valueAt(project, steps.slice(0, at + 1));
      things.push(message(`drawing.at.one-${list}`, { name: nameOf(entry, step) }));
      fields = [];
    } else fields.push(step);
  }
  const field = fieldOf(fields, things.length > 0);
  if (things.length === 0) return field ?? message("drawing.at.file");
  return field ? message("drawing.at.field-of", { things, field }) : message("drawing.at.things", { things });
}

function nameOf(entry: unknown, step: string): string {
  if (isGroup(entry) && typeof entry.id === "string") return entry.id;
  return /^\d+$/.test(step) ? String(Number(step) + 1) : step;
}

/** The word of a field, or of the nearest group round it that has one. */
function fieldOf(fields: readonly string[], inThing: boolean): Message | undefined {
  for (let long = fields.length; long > 0; long -= 1) {
    const path = fields.slice(0, long).join(".");
    const key = inThing ? `drawing.at.of.${path}` : `drawing.at.file.${path}`;
    if (LANGUAGES.every((language) => template(key, language) !== undefined)) return message(key);
  }
  return undefined;
}
