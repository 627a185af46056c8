/** The worker that searches planes, as a function: one search at a time, the latest asked for after it. */
import type { ZoneRef } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import type { PlaneSearchResult } from "../../setout/plane-search/index.ts";
import { latestOf } from "./latest.ts";

export interface PlanesRequest {
  readonly project: Project;
  readonly zones: readonly ZoneRef[];
}

/** Undefined where the program failed. */
export type PlanesReply = PlaneSearchResult | undefined;

export interface PlaneSearcher {
  search(request: PlanesRequest): Promise<PlanesReply>;
}

export function createPlaneSearcher(): PlaneSearcher {
  return {
    search: latestOf<PlanesRequest, PlanesReply>(
      () => new Worker(new URL("./planes.worker.ts", import.meta.url), { type: "module" }),
    ),
  };
}
