/**
 * How few sheets can cover a zone, whatever the layout: a lower bound to judge a layout by. At each place along the wall
 * a least number of sheets stands one over the other. Columns that meet the places where k sheets or more are needed have
 * k sheets or more each, and so many columns it takes to cover those places; summed over k, no layout does with less.
 * A sheet's area is limited besides, and where no sheet may be notched, every jamb parts the columns.
 */
import { common, type Interval } from "../../geometry/interval.ts";
import { signedArea } from "../../geometry/polygon.ts";
import { commonRect, rectArea } from "../../geometry/rect.ts";
import type { Need } from "./needs.ts";
import type { Planner } from "./planner.ts";

export interface SheetBound {
  /** No layout takes fewer sheets. */
  readonly least: number;
  /** No layout without a notch takes fewer sheets. */
  readonly unnotched: number;
  /** What the greater bound comes from. */
  readonly by: "area" | "width and height";
}

const NOISE = 1e-9;

export function sheetBound(planner: Planner): SheetBound {
  const { needs } = planner;
  const ends = planner.zone.ground.bounds.x;
  const byArea = areaBound(planner);
  const byReach = sheetsOver(planner, needs, ends, ({ bridged }) => bridged);
  const byJambs = betweenJambs(planner, needs).reduce(
    (sum, group) => sum + sheetsOver(planner, group, ends, ({ parted }) => parted),
    0,
  );
  const least = Math.max(byArea, byReach);
  const unnotched = Math.max(least, byJambs);
  return { least, unnotched, by: byArea > Math.max(byReach, byJambs) ? "area" : "width and height" };
}

/** The least number of sheets from a column's left edge to the zone's right end. */
export function leastFrom(planner: Planner): (x: number) => number {
  const { needs } = planner;
  const right = planner.zone.ground.bounds.x[1];
  const known = new Map<number, number>();
  return (x) => {
    let sheets = known.get(x);
    if (sheets === undefined) {
      const rest = needs
        .filter((need) => need.x[1] > x)
        .map((need) => (need.x[0] >= x ? need : { ...need, x: [x, need.x[1]] as const }));
      sheets = sheetsOver(planner, rest, [x, right], ({ bridged }) => bridged);
      known.set(x, sheets);
    }
    return sheets;
  };
}

/**
 * Columns and joints fill each run of places that need k sheets or more: n columns and n − 1 joints where it lies between
 * the two `ends`, which are no joints, and up to a joint more at each end that is not one of them.
 */
function sheetsOver(
  { widest, zone }: Planner,
  needs: readonly Need[],
  ends: Interval,
  count: (need: Need) => number,
): number {
  const { joint } = zone.cladding;
  const most = needs.reduce((max, need) => Math.max(max, count(need)), 0);
  let sheets = 0;
  for (let k = 1; k <= most; k++) {
    let covered = 0;
    needs.forEach((need, i) => {
      if (count(need) < k) return;
      const before = needs[i - 1];
      const begins = !before || count(before) < k;
      if (begins) covered -= joint;
      covered += need.x[1] - need.x[0];
      if (need.x[0] <= ends[0]) covered += joint;
      if (need.x[1] >= ends[1]) covered += joint;
    });
    sheets += Math.max(0, Math.ceil(covered / (widest + joint) - NOISE));
  }
  return sheets;
}

function areaBound({ zone, shapes }: Planner): number {
  const { ground, cladding } = zone;
  const cells = shapes.map(({ width, height }) => (width + cladding.joint) * (height + cladding.joint));
  const region = Math.abs(signedArea(ground.region));
  // Round an opening a joint may lie that no sheet beside it accounts for.
  const lost = ground.keepOuts.reduce((sum, { rect }) => {
    const inside = commonRect(rect, ground.bounds);
    const round = inside ? 2 * (inside.x[1] - inside.x[0] + inside.y[1] - inside.y[0]) : 0;
    return sum + (inside ? rectArea(inside) : 0) + round * cladding.joint;
  }, 0);
  const rounds = ground.rounds.reduce((sum, { polygon }) => sum + Math.abs(signedArea(polygon)), 0);
  return Math.max(0, Math.ceil((region - lost - rounds) / Math.max(...cells) - NOISE));
}

function betweenJambs({ zone }: Planner, needs: readonly Need[]): Need[][] {
  const { keepOuts, bounds } = zone.ground;
  // What an opening reaches into the zone by less than a joint may hide in one.
  const cutting = keepOuts.filter(({ rect }) => {
    const y = common(rect.y, bounds.y);
    return y !== undefined && y[1] - y[0] > zone.cladding.joint;
  });
  const jambs = new Set(cutting.flatMap(({ rect }) => rect.x));
  const groups: Need[][] = [];
  for (const need of needs) {
    if (groups.length === 0 || jambs.has(need.x[0])) groups.push([]);
    groups.at(-1)?.push(need);
  }
  return groups;
}
