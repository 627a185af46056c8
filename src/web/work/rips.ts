/** The worker that weighs widths to rip the pile to, as a function. */

import type { Demands } from "../../codes/demands.ts";
import type { RipChoices } from "../../cutting/facade/rip-choice.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type Asked, askOnce } from "./once.ts";

export interface RipsRequest {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
}

/** For each rod that takes from the pile; undefined where the program failed. */
export type RipsReply = readonly RipChoices[] | undefined;

export function weighRips(request: RipsRequest): Asked<RipsReply> {
  const worker = new Worker(new URL("./rips.worker.ts", import.meta.url), { type: "module" });
  return askOnce(worker, request);
}
