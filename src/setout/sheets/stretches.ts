/** Ways from one joint to another: a single column, or equal ones between joints that show a line of their own. */
import type { Interval } from "../../geometry/interval.ts";
import { isHard, type UprightJoint } from "./candidates.ts";
import { divide } from "./divide.ts";
import { isForbidden } from "./pins.ts";
import type { Planner } from "./planner.ts";

export interface Stretch {
  readonly columns: readonly Interval[];
  /** Joint strips between them. */
  readonly inner: readonly Interval[];
}

const MOST_EXTRA_COLUMNS = 1;

/** Whether a single column may stand between two joints; where bands are forbidden it may be wider than the stock. */
export function reaches({ widest, wishes }: Planner, from: UprightJoint, to: UprightJoint): boolean {
  const width = to.x[0] - from.x[1];
  return width > 0 && (width <= widest + 1e-9 || wishes.forbidden.x.length > 0);
}

/** Two equal columns or more: as few as fit, and one more. */
export function divisions(planner: Planner, from: UprightJoint, to: UprightJoint): Stretch[] {
  const x: Interval = [from.x[1], to.x[0]];
  const length = x[1] - x[0];
  if (length <= 0 || !isHard(from) || !isHard(to)) return [];
  const { joint } = planner.zone.cladding;
  const fewest = Math.max(1, Math.ceil((length + joint) / (planner.widest + joint) - 1e-9));
  const found: Stretch[] = [];
  for (let parts = Math.max(2, fewest); parts <= fewest + MOST_EXTRA_COLUMNS; parts++) {
    if (length <= parts * joint) break;
    const columns = divide(x, parts, joint);
    const inner = columns.slice(1).map((column, k): Interval => [(columns[k] as Interval)[1], column[0]]);
    if (!inner.some((strip) => isForbidden(strip, planner.wishes.forbidden.x)))
      found.push({ columns, inner });
  }
  return found;
}
