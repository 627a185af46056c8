/** Sends again and again until all is sent: at once when something is told or the network returns, and else ever more rarely. */
import type { Rest } from "./send-waiting.ts";

/** Between two tries, milliseconds: the first, and the most. */
const FIRST = 1000;
const MOST = 60_000;

/** Journals are asked for news so often, milliseconds. */
const NEWS = 30_000;

/** Milliseconds before the nth try that follows a failure, `share` from 0 to 1 spreading phones that lost one network. */
export function pause(nth: number, share: number): number {
  return Math.min(MOST, FIRST * 2 ** (nth - 1)) * (0.5 + share / 2);
}

export interface Sending {
  /** Something was told, or the reader asks. */
  now(): void;
  leave(): void;
}

/** @param round one pass: sends what waits, and fetches what is new */
export function keepSending(round: () => Promise<Rest>, onRest: (rest: Rest) => void): Sending {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let failures = 0;
  let isRunning = false;
  let isAskedAgain = false;
  let isLeft = false;
  const run = async (): Promise<void> => {
    if (isRunning) {
      isAskedAgain = true;
      return;
    }
    isRunning = true;
    clearTimeout(timer);
    const rest = await alone(round);
    isRunning = false;
    if (isLeft) return;
    onRest(rest);
    failures = rest === "empty" ? 0 : failures + 1;
    if (isAskedAgain) {
      isAskedAgain = false;
      void run();
      return;
    }
    timer = setTimeout(() => void run(), failures === 0 ? NEWS : pause(failures, Math.random()));
  };
  const now = (): void => {
    failures = 0;
    void run();
  };
  const seen = (): void => {
    if (document.visibilityState === "visible") now();
  };
  addEventListener("online", now);
  document.addEventListener("visibilitychange", seen);
  void run();
  return {
    now,
    leave() {
      isLeft = true;
      clearTimeout(timer);
      removeEventListener("online", now);
      document.removeEventListener("visibilitychange", seen);
    },
  };
}

/** Two windows of one phone take turns; where a browser has no locks the server still knows what comes twice. */
function alone(round: () => Promise<Rest>): Promise<Rest> {
  const locks: LockManager | undefined = navigator.locks;
  return locks ? locks.request("outerleaf-site", round) : round();
}
