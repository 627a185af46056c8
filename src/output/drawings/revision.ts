/** What the title block says of the state: the last issue, and whether anything differs from it. */
import type { SceneText } from "../../scene/model.ts";
import { changesSince } from "../../takeoff/issue-state.ts";
import { message } from "../../text/message.ts";
import type { Drawable } from "./facts.ts";

export function titleRevision({ project, facade }: Pick<Drawable, "project" | "facade">): {
  readonly revision: SceneText;
  readonly date: string;
} {
  const last = project.issued?.revisions.at(-1);
  if (!project.issued || !last) return { revision: project.revision ?? "", date: "" };
  const { changed, gone } = changesSince(project.issued.pieces, facade);
  return changed.length + gone.length === 0
    ? { revision: last.revision, date: last.when }
    : { revision: message("drawing.sheet.revision-changed", { revision: last.revision }), date: "" };
}
