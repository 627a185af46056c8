/** How far a soffit's cladding reaches: to an open joint from what lines the recess, and behind the wall in front. */
import { faceFrame } from "../../geometry/frame.ts";
import type { Rect } from "../../geometry/rect.ts";
import type { Face, Project } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import type { ZonePlane } from "../facade.ts";
import type { Soffit } from "./spec.ts";

/** The open joint where the project gives none (common practice). */
const GAP_MM = 8;
/** A lining face looks along the wall, or out of the recess, when its normal is within 45° of that. */
const LOOKS = Math.SQRT1_2;

/** In the soffit's frame (mm). */
export function soffitReach(project: Project, planes: readonly ZonePlane[], soffit: Soffit): Rect {
  const { of, opening, depth, spec } = soffit;
  const gap = spec.gap ?? GAP_MM;
  let [left, right] = [0, snap(opening.x[1] - opening.x[0])];
  let back = depth;
  for (const id of opening.linedBy ?? []) {
    const lining = project.faces.find((face) => face.id === id);
    if (!lining) continue;
    const { inFront, sideways, outOf } = placed(soffit, lining, outermost(planes, id));
    if (sideways >= LOOKS) left = Math.max(left, inFront.x);
    else if (sideways <= -LOOKS) right = Math.min(right, inFront.x);
    else if (outOf >= LOOKS) back = Math.min(back, inFront.y);
  }
  const over = planes.filter(({ face }) => face === of.id);
  const middle = (opening.x[0] + opening.x[1]) / 2;
  const zone = of.zones.find(
    ({ x }) => (x[0] === "left end" || x[0] <= middle) && (x[1] === "right end" || x[1] >= middle),
  );
  const front = over.find((plane) => plane.zone === zone?.id)?.backZ ?? 0;
  return { x: [snap(left + gap), snap(right - gap)], y: [snap(-front), snap(back - gap)] };
}

/** Where the outer plane of a lining's cladding stands in the soffit's frame, and how it looks. */
function placed({ frame }: Soffit, lining: Face, faceZ: number) {
  const own = faceFrame(lining.plan);
  const point = [own.origin[0] + own.outward[0] * faceZ, own.origin[1] + own.outward[1] * faceZ] as const;
  const [dx, dy] = [point[0] - frame.origin[0], point[1] - frame.origin[1]];
  return {
    inFront: {
      x: dx * frame.along[0] + dy * frame.along[1],
      y: -(dx * frame.outward[0] + dy * frame.outward[1]),
    },
    sideways: own.outward[0] * frame.along[0] + own.outward[1] * frame.along[1],
    outOf: own.outward[0] * frame.outward[0] + own.outward[1] * frame.outward[1],
  };
}

function outermost(planes: readonly ZonePlane[], face: string): number {
  return Math.max(0, ...planes.filter((plane) => plane.face === face).map(({ faceZ }) => faceZ));
}
