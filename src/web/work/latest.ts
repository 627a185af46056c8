/** A worker that answers one question at a time: of those that wait, the latest alone is asked, and answers the others. */

interface Waiting<Request, Reply> {
  readonly request: Request;
  readonly resolves: readonly ((reply: Reply) => void)[];
}

/** @param load makes the worker when it is first asked */
export function latestOf<Request, Reply>(load: () => Worker): (request: Request) => Promise<Reply> {
  let worker: Worker | undefined;
  let running: Waiting<Request, Reply> | undefined;
  let next: Waiting<Request, Reply> | undefined;
  const start = (asked: Waiting<Request, Reply>): void => {
    running = asked;
    if (!worker) {
      worker = load();
      worker.addEventListener("message", ({ data }: MessageEvent<Reply>) => {
        for (const resolve of running?.resolves ?? []) resolve(data);
        const waiting = next;
        running = undefined;
        next = undefined;
        if (waiting) start(waiting);
      });
    }
    worker.postMessage(asked.request);
  };
  return (request) =>
    new Promise((resolve) => {
      if (running) next = { request, resolves: [...(next?.resolves ?? []), resolve] };
      else start({ request, resolves: [resolve] });
    });
}
