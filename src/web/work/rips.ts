/** The worker that weighs widths to rip the pile to, as a function. */

import type { Demands } from "../../codes/demands.ts";
import type { RipChoices } from "../../cutting/facade/rip-choice.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";

export interface RipsRequest {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
}

/** For each rod that takes from the pile; undefined where the program failed. */
export type RipsReply = readonly RipChoices[] | undefined;

/** @returns the answer, and how to leave off waiting for it */
export function weighRips(request: RipsRequest): { readonly answer: Promise<RipsReply>; leave(): void } {
  const worker = new Worker(new URL("./rips.worker.ts", import.meta.url), { type: "module" });
  const answer = new Promise<RipsReply>((resolve) => {
    worker.addEventListener("message", ({ data }: MessageEvent<RipsReply>) => resolve(data));
    worker.addEventListener("error", () => resolve(undefined));
    worker.postMessage(request);
  });
  void answer.then(() => worker.terminate());
  return { answer, leave: () => worker.terminate() };
}
