/** How a screw's point is drawn where it is the subject: a fixed point filled, a sliding one open, a plain one a dot. */
import type { Fixing } from "../../setout/facade.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";

/** Millimetres on paper, where the hole itself is smaller. */
const FIXING_RADII: Readonly<Record<Fixing["kind"], number>> = {
  fixed: 0.9,
  sliding: 0.8,
  plain: 0.35,
};

export function fixingMark(
  { x, y, kind, hole }: Pick<Fixing, "x" | "y" | "kind" | "hole">,
  { of, scale }: { of?: string; scale: number },
): Item {
  return {
    kind: "circle",
    layer: layerName("FIXING"),
    ...(of !== undefined && { of }),
    centre: [x, y],
    radius: Math.max(hole / 2, FIXING_RADII[kind] / scale),
    line: kind === "plain" ? "detail" : "visible",
    fill: kind === "sliding" ? "paper" : "ink",
  };
}
