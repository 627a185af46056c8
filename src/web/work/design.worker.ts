/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { designFile } from "../../design.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignAnswer, DesignReply, DesignRequest } from "./messages.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const memo = createFaceMemo({ faces: 500, shareds: 3 });

function answer({ name, text }: DesignRequest): DesignAnswer {
  try {
    return designFile({ name, text }, memo);
  } catch {
    return { kind: "broken", name };
  }
}

self.addEventListener("message", ({ data }: MessageEvent<DesignRequest>) => {
  self.postMessage({ id: data.id, answer: answer(data) } satisfies DesignReply);
});
