/** How much sun each face takes beside the sunniest way that a wall can look there. */
import type { Demands } from "../../codes/demands.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import { bareWall } from "../../proof/light/behind-slot.ts";
import { NO_SHADE } from "../../proof/light/model.ts";
import { shadeAt } from "../../proof/light/shade.ts";
import { SUNS } from "../../proof/light/sun-memo.ts";
import { lightSite } from "../../proof/light/zone-light.ts";

/** Ways that are looked at for the sunniest, degrees apart. */
const STEP_DEG = 15;

/**
 * The share of each face, 0 to 1, by its id: light of a year of clear skies at its foot over that of an unshaded wall that looks where
 * it takes most. Undefined where the project does not tell its ground.
 */
export function sunShares(project: Project, demands: Demands): ReadonlyMap<string, number> | undefined {
  const site = lightSite(demands);
  if (!site) return undefined;
  const sun = SUNS.recall(site);
  const yearOn = (azimuthDeg: number, shade = NO_SHADE): number =>
    bareWall(sun.on({ azimuthDeg, across: "level", shade })).lightKWhYear;
  const most = Math.max(
    ...Array.from({ length: 360 / STEP_DEG }, (_, i) => yearOn(i * STEP_DEG)),
    ...project.faces.map(({ azimuthDeg }) => yearOn(azimuthDeg)),
  );
  return new Map(
    project.faces.map((face) => {
      const foot = polygonBounds(face.outline).y[0];
      const shade = shadeAt({ project, face, faceZ: 0 }, foot);
      return [face.id, most > 0 ? yearOn(face.azimuthDeg, shade) / most : 0];
    }),
  );
}
