/** What the sheets say of the state: the last issue, and what differs from it or, where nothing does, from the one before. */
import type { SceneText } from "../../scene/model.ts";
import { type Changes, changesSince } from "../../takeoff/issue-state.ts";
import { message } from "../../text/message.ts";
import type { Drawable } from "./facts.ts";

export interface SheetState extends Changes {
  /** Of the title block. */
  readonly revision: SceneText;
  readonly date: string;
}

type Issuable = Pick<Drawable, "project" | "facade">;

/** One set asks often for the same facade's. */
const KEPT = new WeakMap<Issuable["facade"], { of: unknown; state: SheetState }>();

export function sheetState({ project, facade }: Issuable): SheetState {
  const kept = KEPT.get(facade);
  if (kept && kept.of === project.issued) return kept.state;
  const state = worked({ project, facade });
  if (project.issued) KEPT.set(facade, { of: project.issued, state });
  return state;
}

function worked({ project: { issued, revision }, facade }: Issuable): SheetState {
  const last = issued?.revisions.at(-1);
  if (!issued || !last) return { revision: revision ?? "", date: "", changed: [], gone: [] };
  const since = changesSince(issued.pieces, facade);
  if (since.changed.length + since.gone.length > 0) {
    return {
      ...since,
      revision: message("drawing.sheet.revision-changed", { revision: last.revision }),
      date: "",
    };
  }
  return {
    revision: last.revision,
    date: last.when,
    changed: last.changed ?? [],
    gone: last.gone ?? [],
  };
}
