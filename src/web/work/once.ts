/** A worker that is asked one thing and then let go, with all that it had loaded. */

export interface Asked<Reply> {
  /** Undefined where the program failed. */
  readonly answer: Promise<Reply | undefined>;
  /** Stops it at once; there is then no answer. */
  leave(): void;
}

export function askOnce<Request, Reply>(worker: Worker, request: Request): Asked<Reply> {
  const answer = new Promise<Reply | undefined>((resolve) => {
    worker.addEventListener("message", ({ data }: MessageEvent<Reply | undefined>) => resolve(data));
    worker.addEventListener("error", () => resolve(undefined));
    worker.postMessage(request);
  }).finally(() => worker.terminate());
  return { answer, leave: () => worker.terminate() };
}
