/** Woods and commercial groups of woods. What is not known of one is absent; nothing is filled in by a default. */
import { type Catalogue, figureFiles, speciesFile } from "./files.ts";
import type { Species, SpeciesFile } from "./schema/species.ts";

export type { Species } from "./schema/species.ts";

/** A wood or a group by its id, such as `white-spruce` or `spruce-pine-fir`. */
export function species(id: string, from: Catalogue = figureFiles): Species | undefined {
  return from.species.species.find((entry) => entry.id === id);
}

export function speciesIds(): string[] {
  return speciesFile.species.map((entry) => entry.id);
}

/** Rules of thumb for woods in general. A caller that falls back on one says so in its finding. */
export const woodRules: SpeciesFile["rules"] = speciesFile.rules;
