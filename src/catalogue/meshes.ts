/** Meshes and perforated sheets at the open ends of a cavity, and the openings that keep things out. */
import { type Catalogue, figureFiles, meshesFile } from "./files.ts";
import type { OpeningLimit, PerforatedSheet, WovenMesh } from "./schema/meshes.ts";

export type { OpeningLimit, PerforatedSheet, WovenMesh } from "./schema/meshes.ts";

const byId = new Map<string, WovenMesh | PerforatedSheet>(
  [...meshesFile.woven, ...meshesFile.perforated].map((entry) => [entry.id, entry]),
);

/** A mesh by its id: opening and wire in millimetres (`3-0.5`), or pattern, hole and pitch (`staggered-60-3-5`). */
export function mesh(id: string): WovenMesh | PerforatedSheet | undefined {
  return byId.get(id);
}

export function meshIds(): string[] {
  return [...byId.keys()];
}

/** What sources say of the opening that keeps one kind of intruder out; empty where none is known. */
export function openingLimits(
  against: OpeningLimit["against"],
  from: Catalogue = figureFiles,
): OpeningLimit[] {
  return from.meshes.openings.filter((entry) => entry.against === against);
}
