/** Woods and commercial groups of woods. What is not known of one is absent; nothing is filled in by a default. */
import { speciesFile } from "./files.ts";
import type { Species, SpeciesFile } from "./schema/species.ts";

export type { Species } from "./schema/species.ts";

const byId = new Map(speciesFile.species.map((entry) => [entry.id, entry]));

/** A wood or a group by its id, such as `white-spruce` or `spruce-pine-fir`. */
export function species(id: string): Species | undefined {
  return byId.get(id);
}

export function speciesIds(): string[] {
  return [...byId.keys()];
}

/** Rules of thumb for woods in general. A caller that falls back on one says so in its finding. */
export const woodRules: SpeciesFile["rules"] = speciesFile.rules;
