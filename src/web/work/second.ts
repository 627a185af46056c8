/** The second thread of the cutting, as the first one sees it. */
import type { SecondThread } from "../../cutting/facade/facade-plans.ts";
import type { CutSearch } from "../../cutting/facade/search.ts";
import type { SecondAsk, SecondPost } from "./second-thread.ts";

/** Searches in its hands at once: the next is there when one has ended, though the first thread hears of that some milliseconds later. */
const IN_HAND = 2;

/** A way to it. */
export interface SecondPort {
  readonly ask: (ask: SecondAsk) => void;
}

export interface Second extends SecondThread {
  /** Whether the first has nothing to do until it is heard. */
  readonly waits: () => boolean;
  /** Settles when it has told something, was stopped or failed. */
  readonly heard: () => Promise<void>;
  /** What it was at may go on later from where it stands. */
  readonly stop: () => void;
}

/** @param open called when it is first wanted; gives nothing where no second thread is to be had, and then all is searched in the first */
export function createSecond(
  open: (hear: (said: SecondPost) => void, fail: () => void) => SecondPort | undefined,
): Second {
  const ids = new WeakMap<CutSearch, number>();
  const hands = new Map<number, CutSearch>();
  let port: SecondPort | undefined;
  let failed = false;
  let last = 0;
  let waits = false;
  let settle = (): void => undefined;

  const told = (): void => {
    waits = false;
    settle();
  };
  const fail = (): void => {
    failed = true;
    hands.clear();
    told();
  };
  const hear = (said: SecondPost): void => {
    if (said.kind === "broken") {
      fail();
      return;
    }
    hands.get(said.id)?.hear(said.state);
    if (said.state.ended) hands.delete(said.id);
    told();
  };
  const idOf = (search: CutSearch): number => {
    const id = ids.get(search) ?? ++last;
    ids.set(search, id);
    return id;
  };
  return {
    take: (search) => {
      if (failed || hands.size >= IN_HAND) return;
      port ??= open(hear, fail);
      if (!port) {
        failed = true;
        return;
      }
      const id = idOf(search);
      hands.set(id, search);
      port.ask({ kind: "search", id, problem: search.problem });
    },
    has: (search) => hands.has(ids.get(search) ?? 0),
    waitFor: () => {
      waits = hands.size > 0;
    },
    waits: () => waits,
    heard: () =>
      new Promise((resolve) => {
        settle = resolve;
      }),
    stop: () => {
      if (hands.size > 0) port?.ask({ kind: "stop" });
      hands.clear();
      told();
    },
  };
}

/** Its own worker within this one; none where the browser gives none or the machine has one core. */
export function secondWorker(hear: (said: SecondPost) => void, fail: () => void): SecondPort | undefined {
  if (typeof Worker === "undefined" || navigator.hardwareConcurrency < 2) return undefined;
  const worker = new Worker(new URL("./second.worker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<SecondPost>) => hear(data));
  worker.addEventListener("error", fail);
  return { ask: (ask) => worker.postMessage(ask) };
}
