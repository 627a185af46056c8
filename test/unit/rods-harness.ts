/** Sets the rods of a document out by themselves, as setting-out does, with the season or without. */
import { demandsOf } from "../../src/codes/demands.ts";
import { counterClockwise, type Polygon } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { keepOutsOf, zoneGround } from "../../src/setout/ground-plan.ts";
import { type RodSetOut, type RodZone, setOutRod } from "../../src/setout/rods.ts";
import type { GapSeason } from "../../src/setout/storey/season.ts";

export function readAs(document: unknown): Project {
  const result = readDocument(document, "rods");
  if (!result.ok) throw new Error(JSON.stringify(result.findings.map(({ says }) => says)));
  return result.project;
}

export function rodZonesOf(project: Project, rod: number): RodZone[] {
  const spec = project.rods![rod]!;
  return spec.zones.map(({ face: id, zone: zoneId }) => {
    const face = project.faces.find((one) => one.id === id)!;
    const zone = face.zones.find((one) => one.id === zoneId)!;
    const keepOuts = keepOutsOf(project, face);
    const outline = counterClockwise(face.outline as Polygon);
    return { ground: zoneGround({ face, zone, outline, keepOuts, rounds: [] }), faceKeepOuts: keepOuts };
  });
}

/** @param season `true` takes the season from the project's demands */
export function rodOf(project: Project, season: boolean | GapSeason, rod = 0): RodSetOut {
  const zones = rodZonesOf(project, rod);
  const demand = demandsOf(project).boards[zones[0]!.ground.zone.cladding]!;
  const taken = season === true ? demand.seasonal : season === false ? undefined : season;
  return setOutRod(project, project.rods![rod]!, zones, demand.gapBand, taken, {});
}
