/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { designFile } from "../../design.ts";
import { createSunMemo } from "../../proof/light/sun-memo.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignAnswer, DesignReply, DesignRequest } from "./messages.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const memo = createFaceMemo({ faces: 500, shareds: 3 });
/** The sun of the project's place, and of one before it. */
const light = { memo: createSunMemo({ places: 2 }) };

function answer({ name, text }: DesignRequest): DesignAnswer {
  try {
    return designFile({ name, text }, memo, light);
  } catch {
    return { kind: "broken", name };
  }
}

self.addEventListener("message", ({ data }: MessageEvent<DesignRequest>) => {
  self.postMessage({ id: data.id, answer: answer(data) } satisfies DesignReply);
});
