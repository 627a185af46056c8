/** From a scene's millimetres to the page's, which count down. */
import type { Point } from "../geometry/point.ts";
import type { ArcShape } from "../scene/shapes.ts";

export interface Placement {
  readonly scale: number;
  /** Model point that stands at the page's point `to`. */
  readonly from: Point;
  readonly to: Point;
}

export function placed([x, y]: Point, { scale, from, to }: Placement): [x: number, y: number] {
  return [to[0] + (x - from[0]) * scale, to[1] - (y - from[1]) * scale];
}

/** An arc on the page: where it begins and ends, and which of the four arcs of SVG it is. */
export function placedArc(
  { centre, radius, fromDeg, toDeg }: ArcShape,
  placement: Placement,
): {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  readonly large: 0 | 1;
  readonly sweep: 0;
} {
  const at = (deg: number): Point => {
    const angle = (deg * Math.PI) / 180;
    return placed([centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)], placement);
  };
  return {
    from: at(fromDeg),
    to: at(toDeg),
    radius: radius * placement.scale,
    large: toDeg - fromDeg > 180 ? 1 : 0,
    // Counter-clockwise in the model is sweep 0 where y points down.
    sweep: 0,
  };
}
