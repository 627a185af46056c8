/** Where a finding holds, in words for paper. */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import type { SceneText } from "../model.ts";
import { placeInFile } from "./place-in-file.ts";

/** More marks than this are counted, not listed. */
const SHOWN_MARKS = 12;

/**
 * Face, zone, opening and marks; where a finding names none, what its path of the file leads to; without a path the whole building.
 */
export function placeOf({ where }: Finding, project: Project): SceneText {
  const { face, zone, opening, marks = [], path } = where;
  const ids = [face, zone, opening].filter((id) => id !== undefined).join(" / ");
  const shown = marks.slice(0, SHOWN_MARKS).join(", ");
  const place = [ids, shown].filter((part) => part !== "").join(" · ");
  const more = marks.length - SHOWN_MARKS;
  if (more > 0)
    return message("book.place-more", { place, more: message("book.more-marks", { count: more }) });
  if (place !== "") return place;
  return path === undefined || path === "" ? message("book.whole-building") : placeInFile(path, project);
}
