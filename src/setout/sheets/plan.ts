/** The layout of a sheet zone with what it was weighed against. */
import { type SheetBound, sheetBound } from "./bound.ts";
import { type Found, findColumns, type Layout } from "./columns.ts";
import { findGrid } from "./grid.ts";
import type { LevelLine } from "./levels.ts";
import { type JointWishes, jointWishes, type Pin, withoutPin } from "./pins.ts";
import { type Planner, plannerFor } from "./planner.ts";
import { NO_COST } from "./score.ts";
import type { SheetZone } from "./zone.ts";

export interface ColumnPlan extends Layout {
  /** The next cheapest layout; absent where there is no other. */
  readonly runnerUp?: Layout;
  /** Candidate joints that the search chose from. */
  readonly candidates: number;
  readonly bound: SheetBound;
  readonly wishes: JointWishes;
  readonly levels: readonly LevelLine[];
  /** What the layout would be without one of the pins. */
  readonly without: readonly { readonly pin: Pin; readonly layout: Layout }[];
}

/** Of a zone too narrow for a sheet. */
const NO_LAYOUT: Layout = { columns: [], joints: [], score: NO_COST, print: 0 };

export function planColumns(zone: SheetZone): ColumnPlan {
  const wishes = jointWishes(zone);
  const planner = plannerFor(zone, wishes);
  const { best = NO_LAYOUT, runnerUp, candidates } = find(planner);
  return {
    candidates,
    bound: sheetBound(planner),
    wishes,
    levels: planner.levels,
    without: [...wishes.pins.x, ...wishes.pins.y].map((pin) => ({
      pin,
      layout: find(plannerFor(zone, withoutPin(wishes, pin))).best ?? NO_LAYOUT,
    })),
    ...best,
    ...(runnerUp && { runnerUp }),
  };
}

function find(planner: Planner): Found {
  return planner.zone.ground.zone.pattern === "grid" ? findGrid(planner) : findColumns(planner);
}
