/** The worker that searches on for cheaper cuts: it tells of each try until it is stopped. */
import type { Tried } from "../../cutting/facade/search-on.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";

export interface SearchOnRequest {
  readonly project: Project;
  readonly facade: Facade;
}

export type SearchOnReply =
  | { readonly kind: "tried"; readonly tried: Tried }
  /** Broken where the program failed. */
  | { readonly kind: "ended"; readonly broken: boolean };

/** @returns stops it at once, whatever it is at */
export function startSearchOn(
  request: SearchOnRequest,
  onReply: (reply: SearchOnReply) => void,
): { readonly stop: () => void } {
  const worker = new Worker(new URL("./search-on.worker.ts", import.meta.url), { type: "module" });
  worker.addEventListener("message", ({ data }: MessageEvent<SearchOnReply>) => {
    if (data.kind === "ended") worker.terminate();
    onReply(data);
  });
  worker.postMessage(request);
  return { stop: () => worker.terminate() };
}
