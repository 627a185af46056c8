/**
 * The upright joint lines of a sheet zone, found exactly: the cheapest path from the left end to the right over all
 * candidate joints, a pin never passed over. Between joints that show a line of their own a stretch may also be divided
 * equally, into as few columns as fit or one more. The second cheapest layout is kept as the runner-up.
 */
import type { Interval } from "../../geometry/interval.ts";
import { leastFrom } from "./bound.ts";
import { isHard, jointScore, type UprightJoint, uprightJoints } from "./candidates.ts";
import { OFFSET_SHARE } from "./levels.ts";
import { type Column, offer, type Path, type Paths } from "./paths.ts";
import type { Planner } from "./planner.ts";
import { addScores, NO_COST, type Score, WEIGHTS } from "./score.ts";
import { cheapestStack, columnFloor, everyStack, type Stack, stackScore, unstacked } from "./stacks.ts";
import { divisions, reaches, type Stretch } from "./stretches.ts";

/** A layout of a zone: columns with their rows, and the joints between them. */
export interface Layout {
  readonly columns: readonly Column[];
  readonly joints: readonly UprightJoint[];
  readonly score: Score;
  /** Tells layouts with other joints apart; the same joints give the same number. */
  readonly print: number;
}

export interface Found {
  /** Absent only where every layout costs the limit or more. */
  readonly best?: Layout;
  readonly runnerUp?: Layout;
  /** Candidate joints that the search chose from. */
  readonly candidates: number;
}

const NOISE = 1e-6;

/** In the offset pattern every column carries its cheapest stacks along, so that neighbours can be matched. */
const STACKS_KEPT = 64;

/**
 * @param limit layouts that cost more are not looked for
 * @param joints the zone's, where they are known
 */
export function findColumns(
  planner: Planner,
  limit = Number.POSITIVE_INFINITY,
  joints = uprightJoints(planner),
): Found {
  // Layouts over the joints that show are among all layouts: their costs bound what is worth looking at in full.
  const [, coarse] = search(planner, joints.filter(isHard), limit);
  const [best, runnerUp] = search(planner, joints, Math.min(limit, coarse?.total ?? limit)).map((end) =>
    unwind(planner, end),
  );
  return { candidates: joints.length - 2, ...(best && { best }), ...(runnerUp && { runnerUp }) };
}

/** Whether columns that cost at least so much each can make a layout within the limit. */
export function mayCostLess(
  planner: Planner,
  joints: readonly UprightJoint[],
  { limit, floor }: { readonly limit: number; readonly floor: (x: Interval) => number },
): boolean {
  return search(planner, joints, limit, floor).length > 0;
}

/** The cheapest path from the first joint to the last, and the next cheapest. */
function search(
  planner: Planner,
  joints: readonly UprightJoint[],
  limit: number,
  floor?: (x: Interval) => number,
): Path[] {
  const walker = new Walker(planner, limit, floor);
  const reached: Paths[] = joints.map(() => new Map());
  reached[0]?.set(0, { cuts: [], paths: [{ total: 0, print: 0 }] });
  let pin = 0;
  for (let j = 1; j < joints.length; j++) {
    const [end, into] = [joints[j] as UprightJoint, reached[j] as Paths];
    for (let i = pin; i < j; i++) {
      if ((reached[i] as Paths).size === 0) continue;
      if (reaches(planner, joints[i] as UprightJoint, end)) {
        const x: Interval = [(joints[i] as UprightJoint).x[1], end.x[0]];
        walker.step(x, { from: reached[i] as Paths, joint: end, to: into, into });
      }
    }
    // Single columns give good paths early, so that most divisions are dropped before they are measured.
    for (let i = pin; i < j; i++) {
      if ((reached[i] as Paths).size === 0) continue;
      for (const stretch of divisions(planner, joints[i] as UprightJoint, end)) {
        walker.walk(stretch, { starts: reached[i] as Paths, end, into });
      }
    }
    if (walker.isHopeless(into, end.x[1])) into.clear();
    if (end.answers === "pin") pin = j;
  }
  return [...(reached.at(-1) as Paths).values()]
    .flatMap(({ paths }) => paths)
    .sort((a, b) => a.total - b.total)
    .slice(0, 2);
}

interface Walk {
  readonly starts: Paths;
  readonly end: UprightJoint;
  readonly into: Paths;
}

interface Step {
  readonly from: Paths;
  /** To the right of the column. */
  readonly joint: UprightJoint;
  readonly to: Paths;
  /** Where the whole stretch ends: what is kept there tells what is too dear. */
  readonly into: Paths;
}

class Walker {
  readonly #planner: Planner;
  readonly #limit: number;
  readonly #offset: boolean;
  readonly #apart: number;
  readonly #leastFrom: (x: number) => number;
  readonly #floor: ((x: Interval) => number) | undefined;

  /** @param floor what columns are weighed by, in place of their stacks */
  constructor(planner: Planner, limit: number, floor?: (x: Interval) => number) {
    this.#planner = planner;
    this.#floor = floor;
    this.#limit = limit + NOISE;
    this.#leastFrom = leastFrom(planner);
    this.#offset = planner.zone.ground.zone.pattern === "offset";
    this.#apart = OFFSET_SHARE * planner.tallest - 1e-9;
  }

  /** Lengthens paths by equal columns, and keeps what is good enough where they end. */
  walk({ columns, inner }: Stretch, { starts, end, into }: Walk): void {
    let from = starts;
    columns.forEach((x, k) => {
      const strip = inner[k];
      if (from.size === 0 || this.#isTooDear(from, x, into)) {
        from = new Map();
        return;
      }
      const to: Paths = strip ? new Map() : into;
      this.step(x, { from, joint: strip ? this.#equalJoint(strip) : end, to, into });
      from = to;
    });
  }

  /** Lengthens paths by one column. */
  step(x: Interval, { from, joint, to, into }: Step): void {
    if (from.size === 0 || this.#isTooDear(from, x, into)) return;
    const ceiling = this.#ceiling(into);
    for (const stack of this.#stacks(x)) this.#lengthen(from, { column: { x, stack }, joint, to, ceiling });
  }

  #lengthen(
    from: Paths,
    { column, joint, to, ceiling }: { column: Column; joint: UprightJoint; to: Paths; ceiling: number },
  ): void {
    const { stack } = column;
    const added = stack.total + joint.score.total;
    for (const { cuts, paths } of from.values()) {
      const crowded = this.#offset ? this.#crowding(cuts, stack) : 0;
      for (const before of paths) {
        const total = before.total + added + crowded * WEIGHTS.crowded;
        if (total < ceiling)
          offer(to, this.#offset ? stack.print : 0, total, { before, column, joint, crowded });
      }
    }
  }

  /** Costs only grow: what is as dear as all that are kept at the end of the stretch cannot come back. */
  #ceiling(into: Paths): number {
    const kept = this.#offset ? undefined : into.get(0)?.paths[1];
    return Math.min(this.#limit, kept?.total ?? Number.POSITIVE_INFINITY);
  }

  /** Whether this column, or all that must still come, takes every path over what is kept. */
  #isTooDear(from: Paths, x: Interval, into: Paths): boolean {
    const cheapest = this.#cheapest(from);
    const least = this.#floor?.(x) ?? columnFloor(this.#planner, x);
    return cheapest + least >= this.#ceiling(into) || this.isHopeless(from, x[0]);
  }

  /** Whether the sheets that must still come from a joint on take every path over the limit. */
  isHopeless(from: Paths, x: number): boolean {
    if (!Number.isFinite(this.#limit)) return false;
    return this.#cheapest(from) + WEIGHTS.sheet * this.#leastFrom(x) >= this.#limit;
  }

  #cheapest(from: Paths): number {
    let least = Number.POSITIVE_INFINITY;
    for (const { paths } of from.values()) least = Math.min(least, (paths[0] as Path).total);
    return least;
  }

  #stacks(x: Interval): readonly Stack[] {
    if (this.#floor) return [unstacked(this.#floor(x))];
    return this.#offset ? everyStack(this.#planner, x, STACKS_KEPT) : [cheapestStack(this.#planner, x)];
  }

  #equalJoint(x: Interval): UprightJoint {
    return { x, answers: "equal", score: jointScore(this.#planner, x, "equal") };
  }

  /** Pairs of level joints in a column and the one before that stand closer than a third of the sheet. */
  #crowding(theirs: readonly number[], { cuts }: Stack): number {
    let pairs = 0;
    for (const cut of cuts) for (const other of theirs) if (Math.abs(cut - other) < this.#apart) pairs += 1;
    return pairs;
  }
}

function unwind(planner: Planner, end: Path): Layout {
  const columns: Column[] = [];
  const joints: UprightJoint[] = [];
  let score = NO_COST;
  for (let path: Path | undefined = end; path; path = path.before) {
    if (path.column) {
      columns.unshift(path.column);
      score = addScores(score, stackScore(planner, path.column.x, path.column.stack));
    }
    if (path.joint && path.joint.answers !== "end") joints.unshift(path.joint);
    if (path.joint) score = addScores(score, path.joint.score);
    const crowded = path.crowded ?? 0;
    score = {
      ...score,
      total: score.total + crowded * WEIGHTS.crowded,
      misaligned: score.misaligned + crowded,
    };
  }
  return { columns, joints, score, print: end.print };
}
