/** The woods that a board cladding may be made of: its own word and those of the lots that it draws on. */
import type { BoardCladding, Project } from "../project/schema/project.ts";

export interface BoardWood {
  /** As the project file writes it. */
  readonly name: string;
  /** Ids of the lots of this wood; empty where only the cladding names it. */
  readonly lots: readonly string[];
}

export function boardWoods(project: Project, cladding: BoardCladding): BoardWood[] {
  const named = new Set(cladding.lots ?? []);
  const lots = project.pile?.lots.filter(({ id }) => named.has(id)) ?? [];
  const names = new Set([cladding.species, ...lots.map(({ species }) => species)]);
  return [...names].map((name) => ({
    name,
    lots: lots.filter(({ species }) => species === name).map(({ id }) => id),
  }));
}
