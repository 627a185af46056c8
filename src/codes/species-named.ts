/** Finds a wood of the catalogue by the words of a project file: `northern white cedar` as well as its id. */
import { type Species, species } from "../catalogue/species.ts";

export function speciesNamed(words: string): Species | undefined {
  return species(words.trim().toLowerCase().replace(/\s+/g, "-"));
}
