/** Weights of pieces from the catalogue's densities and the project's data sheets (kg). */
import { lowest } from "../catalogue/figure.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import { species } from "../catalogue/species.ts";
import { regionArea } from "../geometry/region.ts";
import type { Project } from "../project/schema/project.ts";
import type { DraftPiece } from "./draft.ts";

/** Boards and battens hang outdoors near this moisture content (%). */
const IN_SERVICE_MOISTURE_PERCENT = 15;
const MM3_PER_M3 = 1e9;

/** Density in service (kg/m³), or undefined where neither the catalogue nor the project knows it. */
function densityOf(project: Project, material: string): number | undefined {
  const sheet = project.claddings.find((one) => one.kind === "sheets" && one.material === material);
  if (sheet?.kind === "sheets") return sheet.dataSheet.densityKgM3;
  const wood = species(material, catalogueWith(project.figures));
  if (wood?.specificGravityAt12) {
    // Wood Handbook Eq (4-14): density = 1000 · G · (1 + MC/100).
    return 1000 * wood.specificGravityAt12.value * (1 + IN_SERVICE_MOISTURE_PERCENT / 100);
  }
  if (wood?.specificGravityFastener) {
    return 1000 * wood.specificGravityFastener.value * (1 + IN_SERVICE_MOISTURE_PERCENT / 100);
  }
  return wood?.densityAt12 ? lowest(wood.densityAt12) : undefined;
}

/** Mass of a piece (kg); 0 where its density is not known, which proof reports. */
export function massOf(project: Project, piece: DraftPiece): number {
  const density = densityOf(project, piece.material) ?? 0;
  const volume = regionArea({ outline: piece.outline, holes: piece.holes }) * (piece.z[1] - piece.z[0]);
  return Math.round((volume / MM3_PER_M3) * density * 1000) / 1000;
}
