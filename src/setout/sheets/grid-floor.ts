/**
 * No more than a column costs under level lines of which only the lowest are chosen: its bands below the highest of these
 * exactly, and over it the cheapest ones that this column alone could have. What a band costs a column depends on the two
 * lines beside it only, so each is worked once for all sets of lines.
 */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import type { LevelLine } from "./levels.ts";
import type { Planner } from "./planner.ts";
import { type ColumnStrip, rowCost } from "./runs.ts";
import { broken } from "./stacks.ts";

interface Banded {
  readonly column: ColumnStrip;
  readonly parts: readonly Interval[];
  /** Of the band between two lines, the zone's base and top among them; NaN where not worked yet. */
  readonly bands: Float64Array;
  /** Of the cheapest bands over a line. */
  readonly above: Float64Array;
}

/** @param lines from the lowest up; −1 stands for the zone's base below and the count for its top */
export class GridFloor {
  readonly #planner: Planner;
  readonly #lines: readonly LevelLine[];
  readonly #next: readonly (readonly number[])[];
  readonly #columns = new Map<number, Map<number, Banded>>();

  /** @param next which lines, or the top, may follow on the base and on each line */
  constructor(planner: Planner, lines: readonly LevelLine[], next: readonly (readonly number[])[]) {
    this.#planner = planner;
    this.#lines = lines;
    this.#next = next;
  }

  /** What a column costs at the least if these are its lowest lines. */
  of(x: Interval, chosen: readonly number[]): number {
    const column = this.#column(x);
    let total = 0;
    let below = -1;
    for (const line of chosen) {
      total += this.#band(column, below, line);
      below = line;
    }
    return total + this.#above(column, below);
  }

  #above(column: Banded, line: number): number {
    const known = column.above[line + 1] as number;
    if (!Number.isNaN(known)) return known;
    let least = Number.POSITIVE_INFINITY;
    for (const next of this.#next[line + 1] ?? []) {
      const rest = next === this.#lines.length ? 0 : this.#above(column, next);
      least = Math.min(least, this.#band(column, line, next) + rest);
    }
    column.above[line + 1] = least;
    return least;
  }

  #band(column: Banded, low: number, high: number): number {
    const at = (low + 1) * (this.#lines.length + 1) + high;
    const known = column.bands[at] as number;
    if (!Number.isNaN(known)) return known;
    const total = this.#worked(column, this.#lines[low], this.#lines[high]);
    column.bands[at] = total;
    return total;
  }

  /** A line parts a stretch where it lies over its foot and its joint under its top. */
  #worked({ column, parts }: Banded, below: LevelLine | undefined, over: LevelLine | undefined): number {
    const { joint } = this.#planner.zone.cladding;
    let total = 0;
    for (const [foot, top] of parts) {
      const start = below ? snap(below.at + joint) : foot;
      if ((over && over.at <= foot) || (below && start >= top)) continue;
      const cut = below !== undefined && below.at > foot;
      const end = over && snap(over.at + joint) < top ? over.at : top;
      total += (cut ? below.cost : 0) + rowCost(this.#planner, column, [cut ? start : foot, end]);
    }
    return total;
  }

  #column([from, to]: Interval): Banded {
    let ends = this.#columns.get(from);
    if (!ends) {
      ends = new Map();
      this.#columns.set(from, ends);
    }
    let column = ends.get(to);
    if (!column) {
      const count = this.#lines.length + 1;
      const { column: strip, parts } = broken(this.#planner, [from, to]);
      column = {
        column: strip,
        parts,
        bands: new Float64Array(count * count).fill(Number.NaN),
        above: new Float64Array(count).fill(Number.NaN),
      };
      ends.set(to, column);
    }
    return column;
  }
}
