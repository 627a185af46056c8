/** Reads and designs a project beside the page, so that the drawing never waits for it. */
import { type Laid, layFile, proven } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { createProofMemo } from "../../proof/proof-memo.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import type { DesignReply, DesignRequest, WorkerRequest } from "./messages.ts";
import { asHeld, packed, packedLayouts, packedList } from "./packed.ts";

/** The faces of the project at hand and of a few edits back: enough to try a change and take it back at once. */
const faces = createFaceMemo({ spare: 24, shareds: 3 });
/** What was found on faces that an edit leaves alone. */
const proof = createProofMemo();

/** While requests follow one another, a facade is proven when they rest, and at least so often; milliseconds. */
const REST = 60;
const AT_LEAST_EVERY = 250;

/** What the page has. */
const held: { faces: readonly FaceLayout[]; findings: readonly Finding[] } = { faces: [], findings: [] };

interface ToProve extends Pick<DesignRequest, "id" | "passing"> {
  readonly name: string;
  readonly laid: Laid;
  readonly timer: ReturnType<typeof setTimeout>;
}

let waiting: ToProve | undefined;
let lastProven = Number.NEGATIVE_INFINITY;

function send(reply: DesignReply): void {
  self.postMessage(reply);
}

function proveWaiting(): void {
  if (!waiting) return;
  const { id, name, laid, timer } = waiting;
  clearTimeout(timer);
  waiting = undefined;
  try {
    const found = proven(laid, { proof }).findings;
    const places = new Map(found.map((finding, place) => [finding, place]));
    const laying = laid.facade.findings.flatMap((finding) => places.get(finding) ?? []);
    const findings = asHeld(found, held.findings);
    send({ id, kind: "proven", findings: packedList(findings, held.findings), laying });
    held.findings = findings;
  } catch {
    send({ id, kind: "broken", name });
  }
  lastProven = performance.now();
}

/** The facade before a new one: proven, or left where it was only passed. */
function leaveWaiting(): void {
  if (waiting?.passing) {
    clearTimeout(waiting.timer);
    send({ id: waiting.id, kind: "overtaken" });
    waiting = undefined;
  } else proveWaiting();
}

function answer({ id, file, passing, findingsAlone = false }: DesignRequest): void {
  try {
    const made = layFile(file, { faces });
    if (made.kind === "refused") {
      send({ id, ...made });
      return;
    }
    leaveWaiting();
    const { laid, ...read } = made;
    if (!findingsAlone) {
      send({ id, ...read, laid: { ...laid, facade: packed(laid.facade, held.faces) } });
      held.faces = laid.facade.faces;
    }
    // Not at once: a request that has come meanwhile goes first.
    const wait = passing && performance.now() - lastProven < AT_LEAST_EVERY ? REST : 0;
    waiting = { id, passing, name: file.name, laid, timer: setTimeout(proveWaiting, wait) };
  } catch {
    send({ id, kind: "broken", name: file.name });
  }
}

self.addEventListener("message", ({ data }: MessageEvent<WorkerRequest>) => {
  if (data.ask === "design") answer(data);
  else send({ id: data.id, kind: "layouts", layouts: packedLayouts(faces.kept(), held.faces) });
});
