/** The worker as a function: text in, answer out. */
import type { DesignAnswer, DesignReply, DesignRequest } from "./messages.ts";

export interface Designer {
  design(file: { readonly name: string; readonly text: string }): Promise<DesignAnswer>;
  /** Loads the worker before it is needed. */
  warm(): void;
}

/** The worker is loaded when it is first needed, so that it does not hold up the page. */
export function createDesigner(): Designer {
  const waiting = new Map<number, (answer: DesignAnswer) => void>();
  let worker: Worker | undefined;
  let last = 0;
  const running = (): Worker => {
    if (worker) return worker;
    worker = new Worker(new URL("./design.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<DesignReply>) => {
      waiting.get(data.id)?.(data.answer);
      waiting.delete(data.id);
    });
    return worker;
  };
  return {
    design({ name, text }) {
      last += 1;
      const request: DesignRequest = { id: last, name, text };
      return new Promise((resolve) => {
        waiting.set(request.id, resolve);
        running().postMessage(request);
      });
    },
    warm() {
      running();
    },
  };
}
