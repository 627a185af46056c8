/**
 * What a column costs, so that layouts can be compared: sheets cut into an L or U round an opening weigh most, then
 * pieces larger than the stock, slivers, and the number of sheets. Weights are ours; the order is common practice.
 */
import type { Interval } from "../../geometry/interval.ts";
import { intervalLength } from "../../geometry/interval.ts";
import { rectsOverlap } from "../../geometry/rect.ts";
import { stackColumn, tallestFor, widthOfModule } from "./rows.ts";
import type { SheetZone } from "./zone.ts";

export interface ColumnCost {
  readonly total: number;
  readonly notches: number;
  readonly slivers: number;
  readonly sheets: number;
  readonly oversize: number;
}

const NOTCH = 1000;
const OVERSIZE = 5000;
const SLIVER = 300;
const NARROW = 40;
const SHEET = 20;

export function columnCost(zone: SheetZone, x: Interval): ColumnCost {
  const { rows } = stackColumn(zone, x);
  let notches = 0;
  let slivers = 0;
  let oversize = 0;
  let total = 0;
  for (const y of rows) {
    const cut = zone.ground.keepOuts.filter(({ rect }) => rectsOverlap(rect, { x, y })).length;
    notches += cut;
    total += cut * NOTCH + SHEET;
    if (intervalLength(y) > tallestFor(zone, intervalLength(x)) + 1e-9) {
      oversize += 1;
      total += OVERSIZE;
    }
    const share = Math.min(intervalLength(x), intervalLength(y)) / widthOfModule(zone);
    if (share < zone.sliver.floor) {
      slivers += 1;
      total += SLIVER * (2 - share / zone.sliver.floor);
    } else if (share < zone.sliver.wish) total += NARROW * (1 - share / zone.sliver.wish);
  }
  return { total, notches, slivers, sheets: rows.length, oversize };
}
