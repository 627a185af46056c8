/** What is cut out of a wall's body as openings of one of its sides. */
import type { Point } from "../../../geometry/point.ts";
import { polygonBounds, rectInsidePolygon, signedArea } from "../../../geometry/polygon.ts";
import { commonRect, type Rect, rectArea } from "../../../geometry/rect.ts";
import { regionArea, union } from "../../../geometry/region.ts";
import { message } from "../../../text/message.ts";
import type { TakenOpening } from "../face/shape.ts";
import type { Fault } from "./reading.ts";
import { onPlane, outFrom, type UprightPlane } from "./section.ts";
import type { CutOpening } from "./solids.ts";
import { tidy } from "./tidy.ts";

/** Sides nearer to one another lie in one plane (mm). */
export const FLUSH_MM = 0.5;

/** Pieces of outline and openings smaller than this are left over from cuts (mm²). */
export const SLIVER_MM2 = 1000;

/** Openings whose area is nearer to that of the rectangle round them are rectangles. */
const SQUARE_SHARE = 0.999;

export interface Void {
  /** On the plane, from the foot of the file's origin (mm). */
  readonly rect: Rect | undefined;
  /** It is the upright rectangle itself. */
  readonly square: boolean;
  /** It goes through the plane. */
  readonly reaches: boolean;
  readonly entity: string;
  readonly told: Pick<TakenOpening, "kind" | "name">;
}

export function voidOf({ parts, entity, kind, name }: CutOpening, plane: UprightPlane): Void {
  const points = parts.flatMap(({ sides }) => sides.flat(2));
  const out = points.map((point) => outFrom(plane, point));
  const [nearest, farthest] = reachOf(out);
  const rect = polygonBounds(points.map((point) => onPlane(plane, point)));
  const rings = parts.flatMap(({ sides }) =>
    sides.map((side) => (side[0] ?? []).map((point) => onPlane(plane, point))),
  );
  const covered = union(rings.filter((ring) => Math.abs(signedArea(ring)) > 1));
  const area = covered.reduce((sum, one) => sum + regionArea(one), 0);
  return {
    rect: rectArea(rect) > 0 ? rect : undefined,
    square: area >= rectArea(rect) * SQUARE_SHARE,
    reaches: farthest >= -FLUSH_MM && nearest < -FLUSH_MM,
    entity,
    told: { ...(kind && { kind }), ...(name !== undefined && { name }) },
  };
}

/** The opening on a side, with what of it lies within the outline; or why there is none. */
export function openingIn(
  { rect, reaches, entity, told }: Void,
  {
    outline,
    left,
    unitMm,
  }: { readonly outline: readonly Point[]; readonly left: number; readonly unitMm: number },
): { readonly opening: TakenOpening } | { readonly note: Fault["says"] } | { readonly fault: Fault } {
  const box = polygonBounds(outline);
  const own = rect && { x: [rect.x[0] - left, rect.x[1] - left] as const, y: rect.y };
  const within = reaches && own && commonRect(own, box);
  if (!within || rectArea(within) < SLIVER_MM2) return { note: message("intake.ifc.inside", { entity }) };
  const x = within.x.map((one) => tidy(one, unitMm)) as unknown as Rect["x"];
  const y = within.y.map((one) => tidy(one, unitMm)) as unknown as Rect["y"];
  if (!rectInsidePolygon({ x, y }, outline)) return { fault: openingFault("outside", entity) };
  return { opening: { x, y, ...told } };
}

export function openingFault(what: "outside" | "overlaps", entity: string): Fault {
  return { says: message(`intake.ifc.${what}`, { entity }), hint: message(`intake.hint.ifc.${what}`) };
}

/** The least and the most of many numbers: more than a call takes as arguments. */
export function reachOf(values: readonly number[]): [least: number, most: number] {
  return values.reduce(
    ([least, most], one) => [Math.min(least, one), Math.max(most, one)],
    [Infinity, -Infinity],
  );
}
