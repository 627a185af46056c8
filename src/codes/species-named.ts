/** Finds a wood of the catalogue by the words of a project file: `northern white cedar` as well as its id. */
import type { Catalogue } from "../catalogue/files.ts";
import { type Species, species } from "../catalogue/species.ts";

export function speciesNamed(words: string, from?: Catalogue): Species | undefined {
  return species(words.trim().toLowerCase().replace(/\s+/g, "-"), from);
}
