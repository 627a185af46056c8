/** What was left open round an opening, as straight strips whose width can be told. */
import type { Point } from "../../geometry/point.ts";
import { type Polygon, polygonBounds } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { type Region, subtract } from "../../geometry/region.ts";

/** A region cut along the upright lines through its inner square corners: what bends round something becomes straight. */
export function straightStrips(region: Region): Region[] {
  const corners = [region.outline, ...region.holes].flatMap(innerCorners);
  const lines = [...new Set(corners)].sort((a, b) => a - b);
  if (lines.length === 0) return [region];
  const { x, y } = polygonBounds(region.outline);
  return [...lines, x[1]].flatMap((to, i) => {
    const from = lines[i - 1] ?? x[0];
    const beside = [
      { x: [x[0], from] as const, y },
      { x: [to, x[1]] as const, y },
    ].filter((rect) => rect.x[0] < rect.x[1]);
    return subtract(
      region,
      beside.map((rect) => rectOutline(rect)),
    );
  });
}

/** Where along x; outlines run counter-clockwise and holes clockwise, so both turn right where they reach into the region. */
function innerCorners(outline: Polygon): number[] {
  return outline.flatMap(([x, y], i) => {
    const [px, py] = outline.at(i - 1) as Point;
    const [nx, ny] = outline[(i + 1) % outline.length] as Point;
    const turns = (x - px) * (ny - y) - (y - py) * (nx - x);
    const isSquare = (x === px && y === ny) || (y === py && x === nx);
    return turns < 0 && isSquare ? [x] : [];
  });
}

/** How wide a strip is across, whichever way it runs (mm): the least breadth of a convex figure stands square on one of its sides. */
export function breadth(outline: Polygon): number {
  const breadths = outline.map(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length] as Point;
    const long = Math.hypot(nx - x, ny - y);
    if (long === 0) return Number.POSITIVE_INFINITY;
    const off = outline.map(([px, py]) => ((px - x) * (ny - y) - (py - y) * (nx - x)) / long);
    return Math.max(...off) - Math.min(...off);
  });
  return Math.min(...breadths);
}
