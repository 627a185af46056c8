/**
 * What the columns between a joint and a zone's right end cost at the least: each stacked as cheaply as it can be, and
 * neighbours crowded only where pinned level lines part both. In the offset pattern whatever else stands beside a column
 * only adds to this, so it tells early which paths can come to nothing.
 */
import type { Interval } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import { jointScore, type UprightJoint } from "./candidates.ts";
import type { Planner } from "./planner.ts";
import { WEIGHTS } from "./score.ts";
import { broken, cheapestStack } from "./stacks.ts";
import { divisions, reaches, type Stretch } from "./stretches.ts";

/** No column is as narrow. */
const STRIP_MM = 2 / 8000;

export class ToEnd {
  readonly #planner: Planner;
  readonly #columns = new Map<number, Map<number, number>>();
  /** By the joints' left edges. */
  readonly #crowded = new Map<number, number>();
  readonly #least = new Map<UprightJoint, number>();
  readonly #apart: number;

  /**
   * @param joints from the left end to the right end
   * @param apart neighbours' level joints nearer than this are crowded (mm)
   */
  constructor(planner: Planner, joints: readonly UprightJoint[], apart: number) {
    this.#planner = planner;
    this.#apart = apart;
    for (let i = joints.length - 1; i >= 0; i--) {
      const from = joints[i] as UprightJoint;
      let least = i === joints.length - 1 ? 0 : Number.POSITIVE_INFINITY;
      for (let j = i + 1; j < joints.length; j++) {
        const to = joints[j] as UprightJoint;
        const after = to.score.total + this.from(to);
        if (reaches(planner, from, to)) {
          least = Math.min(least, this.column([from.x[1], to.x[0]]) + after);
        }
        for (const stretch of divisions(planner, from, to)) {
          least = Math.min(least, this.stretch(stretch) + after);
        }
        if (to.answers === "pin") break;
      }
      this.#least.set(from, least + this.crowdedAt(from.x));
    }
  }

  /** What pinned lines cost that part the columns on both sides of a joint, whatever these are; nothing at a zone's end. */
  crowdedAt([left, right]: Interval): number {
    if (left === right) return 0;
    let cost = this.#crowded.get(left);
    if (cost === undefined) {
      const before = this.#pinnedIn([snap(left - STRIP_MM), left]);
      const after = this.#pinnedIn([right, snap(right + STRIP_MM)]);
      const pairs = before.flatMap((cut) => after.filter((other) => Math.abs(cut - other) < this.#apart));
      cost = pairs.length * WEIGHTS.crowded;
      this.#crowded.set(left, cost);
    }
    return cost;
  }

  /** An opening that spans a column spans its edge too, so the edge alone is parted by no line that the column is not. */
  #pinnedIn(edge: Interval): number[] {
    const { levels, zone } = this.#planner;
    const forced = levels.filter((line) => line.forced);
    if (forced.length === 0) return [];
    const { parts } = broken(this.#planner, edge);
    return forced
      .filter(({ at }) => parts.some(([from, to]) => at > from && snap(at + zone.cladding.joint) < to))
      .map(({ at }) => at);
  }

  /** From a joint on, the cost of its place left out. */
  from(joint: UprightJoint): number {
    return this.#least.get(joint) ?? Number.POSITIVE_INFINITY;
  }

  column(x: Interval): number {
    let ends = this.#columns.get(x[0]);
    if (!ends) {
      ends = new Map();
      this.#columns.set(x[0], ends);
    }
    let least = ends.get(x[1]);
    if (least === undefined) {
      least = cheapestStack(this.#planner, x).total;
      ends.set(x[1], least);
    }
    return least;
  }

  /** Equal columns with the joints between them. */
  stretch({ columns, inner }: Stretch): number {
    let total = 0;
    for (const x of columns) total += this.column(x);
    for (const strip of inner) {
      total += jointScore(this.#planner, strip, "equal").total + this.crowdedAt(strip);
    }
    return total;
  }
}
