/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { designFile } from "../../design.ts";
import { createProofMemo } from "../../proof/proof-memo.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignReply, DesignRequest } from "./messages.ts";
import { packed } from "./packed.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const memo = createFaceMemo({ faces: 500, shareds: 3 });
/** What was found on faces that an edit leaves alone. */
const proof = createProofMemo();

/** The faces that the page has. */
let held: readonly FaceLayout[] = [];

function answer({ file }: DesignRequest): DesignReply["answer"] {
  try {
    const made = designFile(file, memo, undefined, proof);
    if (made.kind !== "designed") return made;
    const sent = packed(made, held);
    held = made.design.facade.faces;
    return sent;
  } catch {
    return { kind: "broken", name: file.name };
  }
}

self.addEventListener("message", ({ data }: MessageEvent<DesignRequest>) => {
  self.postMessage({ id: data.id, answer: answer(data) } satisfies DesignReply);
});
