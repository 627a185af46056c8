/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { designFile } from "../../design.ts";
import { createProofMemo } from "../../proof/proof-memo.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignReply, DesignRequest } from "./messages.ts";
import { packed } from "./packed.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const faces = createFaceMemo({ faces: 500, shareds: 3 });
/** What was found on faces that an edit leaves alone. */
const proof = createProofMemo();

/** The faces that the page has. */
let held: readonly FaceLayout[] = [];

function send(reply: DesignReply): void {
  self.postMessage(reply);
}

function answer({ id, file }: DesignRequest): void {
  try {
    const made = designFile(file, {
      faces,
      proof,
      onFacade(laid) {
        send({ id, kind: "laid", laid: { ...laid, facade: packed(laid.facade, held) } });
        held = laid.facade.faces;
      },
    });
    if (made.kind === "designed") {
      const { design, ...rest } = made;
      send({ id, ...rest, laying: design.facade.findings, findings: design.findings });
    } else send({ id, ...made });
  } catch {
    send({ id, kind: "broken", name: file.name });
  }
}

self.addEventListener("message", ({ data }: MessageEvent<DesignRequest>) => answer(data));
