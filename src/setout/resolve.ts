/**
 * Looks up what the project's ids point to. Reading a project has made sure that they point somewhere, so a miss here
 * is a programmer's mistake and throws.
 */
import * as lookup from "../project/lookup.ts";
import type { BattenStock, BuildUp, Cladding, Project, Screw, Zone } from "../project/schema/project.ts";

function must<T>(found: T | undefined, id: string): T {
  if (found === undefined) throw new Error(`no entry with the id ${id}`);
  return found;
}

export function claddingOf(project: Project, zone: Zone): Cladding {
  return must(lookup.claddingOf(project, zone), zone.cladding);
}

export function buildUpOf(project: Project, zone: Zone): BuildUp {
  return must(lookup.buildUpOf(project, zone), zone.buildUp);
}

export function screwOf(project: Project, id: string): Screw {
  return must(lookup.screwById(project, id), id);
}

export function battenStock(project: Project, id: string): BattenStock {
  return must(lookup.battenById(project, id), id);
}
