/** Sheets of the facade by kind. Values are typical: the data sheet of the sheet that is bought comes first. */
import { sheetMaterialsFile } from "./files.ts";
import type { FibreCementClass, FibreCementTolerance, SheetMaterial } from "./schema/sheet-materials.ts";

export type { FibreCementClass, FibreCementTolerance, SheetMaterial } from "./schema/sheet-materials.ts";

const byId = new Map(sheetMaterialsFile.materials.map((entry) => [entry.id, entry]));

export function sheetMaterial(id: string): SheetMaterial | undefined {
  return byId.get(id);
}

export function sheetMaterialIds(): string[] {
  return [...byId.keys()];
}

/** Least bending strengths of EN 12467 by class, `class-1` to `class-5`. */
export function fibreCementClass(id: string): FibreCementClass | undefined {
  return sheetMaterialsFile.fibreCementClasses.find((entry) => entry.id === id);
}

/** Size tolerances of EN 12467 by level, `level-1` or `level-2`. */
export function fibreCementTolerance(id: string): FibreCementTolerance | undefined {
  return sheetMaterialsFile.fibreCementTolerances.find((entry) => entry.id === id);
}
