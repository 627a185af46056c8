/** The worker as a function: text in, answer out. */
import type { DesignAnswer, DesignRequest } from "./messages.ts";

export interface Designer {
  design(file: { readonly name: string; readonly text: string }): Promise<DesignAnswer>;
}

export function startDesigner(): Designer {
  const worker = new Worker(new URL("./design.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, (answer: DesignAnswer) => void>();
  let last = 0;
  worker.addEventListener("message", (event: MessageEvent<DesignAnswer>) => {
    waiting.get(event.data.id)?.(event.data);
    waiting.delete(event.data.id);
  });
  return {
    design({ name, text }) {
      last += 1;
      const request: DesignRequest = { id: last, name, text };
      return new Promise((resolve) => {
        waiting.set(request.id, resolve);
        worker.postMessage(request);
      });
    },
  };
}
