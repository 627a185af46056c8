/** The light behind the cladding face by face, as it is painted on an elevation. */
import type { Demands } from "../../codes/demands.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { zoneViews } from "../context.ts";
import { type ZoneLight, zoneLights } from "./zone-light.ts";

export interface FaceLight {
  readonly face: string;
  readonly zones: readonly ZoneLight[];
  /** What the membrane's data sheet allows in a year (MJ/m²); undefined where it is not known. */
  readonly mostMJ: number | undefined;
}

/** None where the project does not tell its ground. */
export function faceLights(design: {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
}): FaceLight[] {
  const lights = zoneLights({ ...design, zones: zoneViews(design) }) ?? [];
  const mostMJ = design.project.limits.membrane?.maxUvPerYear?.value;
  return design.facade.faces.flatMap(({ id }) => {
    const zones = lights.filter(({ view }) => view.where.face === id);
    return zones.length > 0 ? [{ face: id, zones, mostMJ }] : [];
  });
}
