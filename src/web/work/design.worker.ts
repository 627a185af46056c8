/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { design } from "../../design.ts";
import { readProject } from "../../project/read.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignAnswer, DesignRequest } from "./messages.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const memo = createFaceMemo({ faces: 500, shareds: 3 });

function answer({ id, name, text }: DesignRequest): DesignAnswer {
  try {
    const read = readProject(text, name);
    if (!read.ok) return { id, name, kind: "refused", findings: read.findings };
    return { id, name, kind: "designed", design: design(read.project, memo), readFindings: read.findings };
  } catch {
    return { id, name, kind: "broken" };
  }
}

self.addEventListener("message", (event: MessageEvent<DesignRequest>) => {
  self.postMessage(answer(event.data));
});
