/**
 * How one column of a sheet zone is stacked: broken by the openings that span it, and by level joints where it is higher
 * than the stock. A level joint lies above its line, so that the sheet below ends on the line.
 */
import { type Interval, intervalLength, subtractIntervals } from "../../geometry/interval.ts";
import { sliceVertical } from "../../geometry/polygon.ts";
import { snap } from "../../units/length.ts";
import { divide } from "./divide.ts";
import type { SheetZone } from "./zone.ts";

export interface Stack {
  /** Heights of the sheets, from the bottom up. */
  readonly rows: readonly Interval[];
  /** Level joint strips. */
  readonly joints: readonly Interval[];
}

export function stackColumn(zone: SheetZone, x: Interval): Stack {
  const { ground, cladding } = zone;
  const extent = columnExtent(zone, x);
  const spanning = ground.keepOuts
    .filter(({ rect }) => rect.x[0] <= x[0] && rect.x[1] >= x[1])
    .map(({ rect }) => rect.y);
  const rows: Interval[] = [];
  const joints: Interval[] = [];
  const parts = subtractIntervals(extent, spanning);
  for (const part of parts) {
    // Over an opening the joint lies on the clearance, as it does beside the opening.
    const over = spanning.some(([, top]) => top === part[0]);
    const from = over ? snap(part[0] + cladding.joint) : part[0];
    if (over) joints.push([part[0], Math.min(from, part[1])]);
    if (from >= part[1]) continue;
    const split = splitHeight(zone, x, [from, part[1]]);
    rows.push(...split);
    joints.push(...split.slice(1).map((row, i): Interval => [(split[i] as Interval)[1], row[0]]));
  }
  return { rows, joints };
}

/** From the lowest to the highest point of the region within a column. */
function columnExtent({ ground }: SheetZone, x: Interval): Interval {
  if (ground.rectangular) return ground.bounds.y;
  const corners = ground.region.filter(([px]) => px >= x[0] && px <= x[1]).map(([, y]) => y);
  const slices = [x[0] + INSIDE_MM, x[1] - INSIDE_MM].flatMap((at) =>
    sliceVertical(ground.region, at).flat(),
  );
  const ys = [...corners, ...slices].map(snap);
  return [Math.min(...ys), Math.max(...ys)];
}

const INSIDE_MM = 1 / 8000;

/** Splits at the line that leaves the least sliver, or equally where no line serves. */
function splitHeight(zone: SheetZone, x: Interval, height: Interval): Interval[] {
  const tallest = tallestFor(zone, intervalLength(x));
  const { joint } = zone.cladding;
  if (intervalLength(height) <= tallest) return [height];
  const shortest = (line: number): number => Math.min(line - height[0], height[1] - line - joint);
  const least = Math.min(zone.sliver.floor * widthOfModule(zone), intervalLength(height) / 2);
  const fits = zone.lines.filter(
    (line) =>
      line > height[0] &&
      line + joint < height[1] &&
      line - height[0] <= tallest &&
      height[1] - line - joint <= tallest &&
      shortest(line) >= least - 1e-9,
  );
  // A joint at the head of an opening in this zone runs on beside it; other lines of the face come second.
  const here = new Set(zone.ground.keepOuts.map(({ headLine }) => headLine));
  const line = fits.sort((a, b) => Number(here.has(b)) - Number(here.has(a)) || shortest(b) - shortest(a))[0];
  if (line !== undefined) {
    return [
      [height[0], line],
      [snap(line + joint), height[1]],
    ];
  }
  return divide(height, Math.ceil((intervalLength(height) + joint) / (tallest + joint) - 1e-9), joint);
}

export function widthOfModule({ stock }: SheetZone): number {
  return Math.max(...stock.map(({ width, height }) => Math.min(width, height)));
}

/** The tallest sheet of the stock at least this wide, standing or turned. */
export function tallestFor(zone: SheetZone, width: number): number {
  const { stock, trim } = zone;
  const heights = stock.flatMap(({ width: w, height: h }) => [
    ...(w - 2 * trim >= width - 1e-9 ? [h - 2 * trim] : []),
    ...(h - 2 * trim >= width - 1e-9 ? [w - 2 * trim] : []),
  ]);
  return heights.length === 0 ? widthOfModule(zone) : Math.max(...heights);
}
