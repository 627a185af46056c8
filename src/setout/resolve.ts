/**
 * Looks up what the project's ids point to. Reading a project has made sure that they point somewhere, so a miss here
 * is a programmer's mistake and throws.
 */
import type { BattenStock, BuildUp, Cladding, Project, Screw, Zone } from "../project/schema/project.ts";

function must<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((one) => one.id === id);
  if (!found) throw new Error(`no entry with the id ${id}`);
  return found;
}

export function claddingOf(project: Project, zone: Zone): Cladding {
  return must(project.claddings, zone.cladding);
}

export function buildUpOf(project: Project, zone: Zone): BuildUp {
  return must(project.buildUps, zone.buildUp);
}

export function screwOf(project: Project, id: string): Screw {
  return must(project.stock.screws, id);
}

export function battenStock(project: Project, id: string): BattenStock {
  return must(project.stock.battens, id);
}
