/** Searches for a part of the cuts while the worker that cuts searches for the others. */
import { type SecondAsk, secondThread } from "./second-thread.ts";

const hear = secondThread((said) => self.postMessage(said));

self.addEventListener("message", ({ data }: MessageEvent<SecondAsk>) => hear(data));
