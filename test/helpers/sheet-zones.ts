/** The sheet zones of a project as the layout sees them, made the way that setting-out makes them. */
import type { Project } from "../../src/project/schema/project.ts";
import { faceEnds, faceLength } from "../../src/setout/corners.ts";
import { keepOutsOf, reachedOutline, roundsOf, zoneGround } from "../../src/setout/ground-plan.ts";
import { controlLines } from "../../src/setout/lines.ts";
import { planeOf, zonePlane } from "../../src/setout/planes.ts";
import { battenStock, claddingOf } from "../../src/setout/resolve.ts";
import type { SheetZone } from "../../src/setout/sheets/zone.ts";
import { studCentres } from "../../src/setout/solids.ts";

export function sheetZones(project: Project): SheetZone[] {
  const planes = project.faces.flatMap((face) => face.zones.map((zone) => zonePlane(project, face, zone)));
  const corners = faceEnds(project, planes);
  return project.faces.flatMap((face, i) => {
    const ends = corners.ends.get(face.id);
    if (!ends) throw new Error(`${face.id} has no ends`);
    const length = faceLength(face);
    const outline = reachedOutline(face, length, ends);
    const keepOuts = keepOutsOf(project, face);
    const rounds = roundsOf(project, face);
    const grounds = face.zones.map((zone) => zoneGround({ face, zone, outline, keepOuts, rounds }));
    const lines = controlLines({ face, outline, keepOuts, grounds, primary: new Set() })
      .filter(({ direction }) => direction === "horizontal")
      .map(({ at }) => at);
    return grounds.flatMap((ground, j): SheetZone[] => {
      const cladding = claddingOf(project, ground.zone);
      if (cladding.kind !== "sheets") return [];
      const plane = planeOf(planes, face.id, ground.zone.id);
      const batten = plane.layers.find(({ kind }) => kind === "batten")?.stock ?? "";
      return [
        {
          ground,
          cladding,
          plane,
          ends,
          stock: project.stock.sheets.filter(({ id }) => cladding.stock.includes(id)),
          trim: project.stock.saw.sheetTrim,
          lines,
          sliver: { wish: project.limits.sliver.wish.value, floor: project.limits.sliver.floor.value },
          studs: studCentres(project.structure, length),
          battenWidth: battenStock(project, batten).width,
          path: `/faces/${i}/zones/${j}`,
        },
      ];
    });
  });
}
