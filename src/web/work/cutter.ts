/** The worker that cuts, as a function. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Finding } from "../../findings/finding.ts";
import type { DrawingSheet } from "../../output/drawings/drawing-sheets.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Reader } from "../../text/say.ts";

export interface CutRequest {
  readonly name: string;
  readonly document: unknown;
  /** For whom the drawings are made; none are made where absent. */
  readonly drawFor?: Reader;
}

export interface Cut {
  /** Undefined where the verifier refused it: the findings tell. */
  readonly plan: CutPlan | undefined;
  readonly findings: readonly Finding[];
  readonly takeoff: Takeoff;
  readonly drawings?: readonly DrawingSheet[];
}

/** Undefined where the program failed. */
export type CutReply = Cut | undefined;

export interface Cutter {
  /** One facade at a time: of those that wait, the latest alone is cut, and the others are answered by it. */
  cut(request: CutRequest): Promise<CutReply>;
}

interface Waiting {
  readonly request: CutRequest;
  readonly resolves: ((reply: CutReply) => void)[];
}

/** The worker is loaded when it is first asked. */
export function createCutter(): Cutter {
  let worker: Worker | undefined;
  let running: Waiting | undefined;
  let next: Waiting | undefined;
  const start = (asked: Waiting): void => {
    running = asked;
    if (!worker) {
      worker = new Worker(new URL("./cut.worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<CutReply>) => {
        for (const resolve of running?.resolves ?? []) resolve(data);
        running = undefined;
        const waiting = next;
        next = undefined;
        if (waiting) start(waiting);
      });
    }
    worker.postMessage(asked.request);
  };
  return {
    cut: (request) =>
      new Promise((resolve) => {
        if (!running) start({ request, resolves: [resolve] });
        else next = { request, resolves: [...(next?.resolves ?? []), resolve] };
      }),
  };
}
