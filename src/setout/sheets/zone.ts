/** A zone to be clad with sheets, as the layout sees it. */
import type { Project, SheetCladding } from "../../project/schema/project.ts";
import type { FaceEnds } from "../corners.ts";
import type { ZonePlane } from "../facade.ts";
import type { ZoneGround } from "../ground-plan.ts";

export type SheetStock = Project["stock"]["sheets"][number];

export interface SheetZone {
  readonly ground: ZoneGround;
  readonly cladding: SheetCladding;
  readonly plane: ZonePlane;
  readonly ends: FaceEnds;
  readonly stock: readonly SheetStock[];
  /** Taken off each edge of a sheet before it is used (mm). */
  readonly trim: number;
  /** Level lines of the building that joints like to follow, from the base up. */
  readonly lines: readonly number[];
  readonly sliver: { readonly wish: number; readonly floor: number };
  readonly studs: readonly number[];
  readonly battenWidth: number;
  /** The zone's place in the project file (JSON Pointer): a mend of a pin needs it. */
  readonly path?: string;
}
