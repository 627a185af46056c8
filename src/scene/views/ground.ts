/** The ground under an elevation: a heavy line with earth beneath it. */

import type { Point } from "../../geometry/point.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";

/** Millimetres on paper. */
const DEPTH = 2;
const SPACING = 2.2;

/** @param line from left to right, model mm */
export function groundItems(line: Polygon, scale: number): Item[] {
  if (line.length === 0) return [];
  const depth = DEPTH / scale;
  const under = [...line].reverse().map(([x, y]): Point => [x, y - depth]);
  return [
    {
      kind: "hatch",
      layer: layerName("GROUND", "H"),
      outline: [...line, ...under],
      pattern: "earth",
      spacing: SPACING * Math.sin(Math.PI / 3),
    },
    { kind: "polyline", layer: layerName("GROUND"), points: line, line: "ground" },
  ];
}

/** A face's ground carried on level to both sides. */
export function groundLine(ground: Polygon, { from, to }: { from: number; to: number }): Polygon {
  const first = ground[0];
  const last = ground.at(-1);
  if (!first || !last) return [];
  const inner = ground.filter(([x]) => x > from && x < to);
  return [[from, first[1]], ...inner, [to, last[1]]];
}
