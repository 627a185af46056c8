/** Moves items, so that a face drawn in its own frame can stand beside others. */

import type { Point } from "../geometry/point.ts";
import type { Polygon } from "../geometry/polygon.ts";
import type { Item } from "./model.ts";

export function shiftItems(items: readonly Item[], { dx, dy }: { dx: number; dy: number }): Item[] {
  return items.map((item) => shifted(item, { dx, dy }));
}

function shifted(item: Item, { dx, dy }: { dx: number; dy: number }): Item {
  const point = ([x, y]: Point): Point => [x + dx, y + dy];
  const polygon = (points: Polygon): Polygon => points.map(point);
  switch (item.kind) {
    case "line":
      return { ...item, from: point(item.from), to: point(item.to) };
    case "polyline":
    case "leader":
      return { ...item, points: polygon(item.points) };
    case "polygon":
    case "hatch":
      return {
        ...item,
        outline: polygon(item.outline),
        ...(item.holes ? { holes: item.holes.map(polygon) } : {}),
      };
    case "circle":
    case "arc":
      return { ...item, centre: point(item.centre) };
    case "text":
    case "symbol":
      return { ...item, at: point(item.at) };
    case "dimension": {
      const [along, across] = item.along === "x" ? [dx, dy] : [dy, dx];
      return {
        ...item,
        at: item.at + across,
        points: item.points.map((one) => one + along),
        ...(item.from === undefined ? {} : { from: item.from + across }),
        ...(item.origin === undefined ? {} : { origin: item.origin + along }),
      };
    }
  }
}
