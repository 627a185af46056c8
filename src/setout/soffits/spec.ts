/** The soffits that a project asks for, each as a face that lies (docs/decisions/0006). */
import { type FaceFrame, faceFrame } from "../../geometry/frame.ts";
import type { Point } from "../../geometry/point.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { soffitCode } from "../../project/lookup.ts";
import type { Face, Opening, Project, Zone } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";

export type SoffitSpec = NonNullable<Opening["soffit"]>;

export interface Soffit {
  /** The face that the recess opens from. */
  readonly of: Face;
  readonly opening: Opening;
  readonly spec: SoffitSpec;
  readonly depth: number;
  /** JSON Pointer of the soffit in the project file. */
  readonly path: string;
  readonly face: Face;
  readonly zone: Zone;
  readonly frame: FaceFrame;
}

/** In the order of faces and openings. One without the recess's depth is left out: S015 says so. */
export function soffitsOf(project: Project): Soffit[] {
  return project.faces.flatMap((of, i) =>
    of.openings.flatMap((opening, j): Soffit[] => {
      const { soffit: spec, depth } = opening;
      if (!spec || depth === undefined) return [];
      return [soffitOf({ of, opening, spec, depth, path: `/faces/${i}/openings/${j}/soffit` })];
    }),
  );
}

function soffitOf(asked: Pick<Soffit, "of" | "opening" | "spec" | "depth" | "path">): Soffit {
  const { of, opening, spec, depth } = asked;
  const wall = faceFrame(of.plan);
  const at = (x: number): Point => [wall.origin[0] + wall.along[0] * x, wall.origin[1] + wall.along[1] * x];
  const zone: Zone = {
    id: "soffit",
    cladding: spec.cladding,
    buildUp: spec.buildUp,
    x: ["left end", "right end"],
  };
  const face: Face = {
    id: `${of.id}-${opening.id}-soffit`,
    code: soffitCode(of, opening),
    azimuthDeg: of.azimuthDeg,
    plan: { from: [...at(opening.x[0])], to: [...at(opening.x[1])] },
    // Its sheathing, from the front to the back.
    outline: rectOutline({ x: [0, snap(opening.x[1] - opening.x[0])], y: [0, depth] }).map(([x, y]) => [
      x,
      y,
    ]),
    ground: [],
    openings: [],
    zones: [zone],
  };
  return {
    face,
    zone,
    frame: { origin: at(opening.x[0]), along: wall.along, outward: wall.outward, level: opening.y[1] },
    ...asked,
  };
}
