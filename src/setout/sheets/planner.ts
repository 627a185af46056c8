/** What every step of a zone's layout asks, worked once. */
import type { Interval } from "../../geometry/interval.ts";
import { extentFinder } from "./extents.ts";
import { type LevelLine, levelLines } from "./levels.ts";
import { type Need, needsOf } from "./needs.ts";
import { type JointWishes, jointWishes } from "./pins.ts";
import { moduleOf, type Shape, shapesOf } from "./shapes.ts";
import type { SheetZone } from "./zone.ts";

export interface Planner {
  readonly zone: SheetZone;
  readonly wishes: JointWishes;
  readonly shapes: readonly Shape[];
  readonly module: number;
  /** Sheets one over the other that each place along the wall needs at the least. */
  readonly needs: readonly Need[];
  readonly widest: number;
  readonly tallest: number;
  readonly levels: readonly LevelLine[];
  /** Whether a column that is higher than the stock may be parted at lines of its own; not so in a grid. */
  readonly divides: boolean;
  /** From the lowest to the highest point of the zone within a column. */
  readonly extentOf: (x: Interval) => Interval;
  /** Middles of the uprights behind the sheathing that a batten may stand on. */
  readonly uprights: readonly number[];
}

export function plannerFor(zone: SheetZone, wishes: JointWishes = jointWishes(zone)): Planner {
  const shapes = shapesOf(zone);
  const tallest = Math.max(...shapes.map(({ height }) => height));
  return {
    zone,
    wishes,
    shapes,
    module: moduleOf(zone),
    widest: Math.max(...shapes.map(({ width }) => width)),
    tallest,
    needs: needsOf({ zone, tallest }),
    levels: levelLines(zone, wishes),
    divides: true,
    extentOf: extentFinder(zone.ground),
    uprights: uprightsOf(zone),
  };
}

/** The narrowest stud in use (dressed 2 × 4 and the like); a wider one only helps. */
const STUD_MM = 38;
const SCREW_FROM_STUD_EDGE_MM = 8;
const SCREW_FROM_BATTEN_EDGE_MM = 12;

/** Studs, and one trimmer at each side of every opening. */
function uprightsOf({ studs, ground }: SheetZone): number[] {
  const trimmers = ground.keepOuts.flatMap(({ opening: { x } }) => [x[0] - STUD_MM / 2, x[1] + STUD_MM / 2]);
  return [...studs, ...trimmers];
}

/** Whether a batten's screws meet an upright, counted on the narrowest stud; plates, rims and headers are not counted. */
export function standsOnUpright({ uprights }: Pick<Planner, "uprights">, batten: Interval): boolean {
  const core = STUD_MM / 2 - SCREW_FROM_STUD_EDGE_MM;
  const [from, to] = [batten[0] + SCREW_FROM_BATTEN_EDGE_MM, batten[1] - SCREW_FROM_BATTEN_EDGE_MM];
  return uprights.some((middle) => middle + core > from && middle - core < to);
}
