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
import { ToEnd } from "./to-end.ts";

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
const BARE: Round = { beside: 0, ahead: 0 };

/** In the offset pattern every column carries its cheapest stacks along, so that neighbours can be matched. */
const STACKS_KEPT = 64;
/** Enough for a good layout, not for the best. */
const FEW_STACKS = 4;
/** Four crowded pairs: most zones do with fewer. */
const NEAR = 4 * WEIGHTS.crowded;

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
  const [, coarse] = goodLayouts(planner, joints.filter(isHard), limit);
  const [best, runnerUp] = search(planner, joints, { limit: Math.min(limit, coarse?.total ?? limit) }).map(
    (end) => unwind(planner, end),
  );
  return { candidates: joints.length - 2, ...(best && { best }), ...(runnerUp && { runnerUp }) };
}

/** Layouts of few stacks to a column, sought first near the least that any can cost: few stacks of a column come near it. */
function goodLayouts(planner: Planner, joints: readonly UprightJoint[], limit: number): Path[] {
  const sought = { limit, most: FEW_STACKS };
  if (planner.zone.ground.zone.pattern !== "offset") return search(planner, joints, sought);
  const least = new ToEnd(planner, joints, apartOf(planner)).from(joints[0] as UprightJoint);
  const near = search(planner, joints, { ...sought, limit: Math.min(limit, least + NEAR) });
  return near.length < 2 ? search(planner, joints, sought) : near;
}

/** Neighbours' level joints nearer than this are crowded (mm). */
function apartOf({ tallest }: Planner): number {
  return OFFSET_SHARE * tallest - 1e-9;
}

/** Whether columns that cost at least so much each can make a layout within the limit. */
export function mayCostLess(
  planner: Planner,
  joints: readonly UprightJoint[],
  { limit, floor }: { readonly limit: number; readonly floor: (x: Interval) => number },
): boolean {
  return search(planner, joints, { limit, floor }).length > 0;
}

interface Sought {
  /** What costs more is not looked for. */
  readonly limit: number;
  /** What columns are weighed by, in place of their stacks. */
  readonly floor?: (x: Interval) => number;
  /** Stacks of a column that are carried along in the offset pattern. */
  readonly most?: number;
}

/** The cheapest path from the first joint to the last, and the next cheapest. */
function search(planner: Planner, joints: readonly UprightJoint[], sought: Sought): Path[] {
  const walker = new Walker(planner, joints, sought);
  const reached: Paths[] = joints.map(() => new Map());
  reached[0]?.set(0, { cuts: [], paths: [{ total: 0, print: 0 }] });
  let pin = 0;
  for (let j = 1; j < joints.length; j++) {
    const [end, into] = [joints[j] as UprightJoint, reached[j] as Paths];
    for (let i = pin; i < j; i++) {
      if ((reached[i] as Paths).size === 0) continue;
      if (reaches(planner, joints[i] as UprightJoint, end)) {
        const x: Interval = [(joints[i] as UprightJoint).x[1], end.x[0]];
        const from = reached[i] as Paths;
        walker.step(x, { from, joint: end, to: into, into, ...walker.round(joints[i] as UprightJoint, end) });
      }
    }
    // Single columns give good paths early, so that most divisions are dropped before they are measured.
    for (let i = pin; i < j; i++) {
      if ((reached[i] as Paths).size === 0) continue;
      for (const stretch of divisions(planner, joints[i] as UprightJoint, end)) {
        walker.walk(stretch, { starts: reached[i] as Paths, start: joints[i] as UprightJoint, end, into });
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
  readonly start: UprightJoint;
  readonly end: UprightJoint;
  readonly into: Paths;
}

/** What comes to a column's cost at the least, and to that of the joint on its right. */
interface Round {
  /** With the column on its left. */
  readonly beside: number;
  /** After the joint. */
  readonly ahead: number;
}

interface Step extends Round {
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
  readonly #most: number;
  readonly #apart: number;
  readonly #leastFrom: (x: number) => number;
  readonly #floor: ((x: Interval) => number) | undefined;
  /** Of the offset pattern alone, where neighbours add to what columns cost by themselves. */
  readonly #toEnd: ToEnd | undefined;

  constructor(
    planner: Planner,
    joints: readonly UprightJoint[],
    { limit, floor, most = STACKS_KEPT }: Sought,
  ) {
    this.#planner = planner;
    this.#floor = floor;
    this.#most = most;
    this.#limit = limit + NOISE;
    this.#leastFrom = leastFrom(planner);
    this.#apart = apartOf(planner);
    if (planner.zone.ground.zone.pattern === "offset") this.#toEnd = new ToEnd(planner, joints, this.#apart);
  }

  round(left: UprightJoint, right: UprightJoint): Round {
    if (!this.#toEnd) return BARE;
    return { beside: this.#toEnd.crowdedAt(left.x), ahead: this.#toEnd.from(right) };
  }

  /** Lengthens paths by equal columns, and keeps what is good enough where they end. */
  walk(stretch: Stretch, { starts, start, end, into }: Walk): void {
    const { columns, inner } = stretch;
    let from = starts;
    let left = start;
    let ahead = 0;
    if (this.#toEnd) ahead = this.#toEnd.stretch(stretch) + end.score.total + this.#toEnd.from(end);
    for (const [k, x] of columns.entries()) {
      const strip = inner[k];
      const joint = strip ? this.#equalJoint(strip) : end;
      const { beside } = this.round(left, end);
      if (this.#toEnd) ahead -= this.#toEnd.column(x) + joint.score.total + (k > 0 ? beside : 0);
      const to: Paths = strip ? new Map() : into;
      this.step(x, { from, joint, to, into, beside, ahead });
      if (to.size === 0) return;
      from = to;
      left = joint;
    }
  }

  /** Lengthens paths by one column. */
  step(x: Interval, { from, joint, to, into, beside, ahead }: Step): void {
    const least = this.#cheapest(from) + beside;
    const after = joint.score.total + ahead;
    if (this.#isTooDear(x, { from, into, least, after })) return;
    for (const stack of this.#stacks(x, this.#limit - least - after)) {
      this.#lengthen(from, { column: { x, stack }, joint, to, ceiling: this.#ceiling(into) - ahead });
    }
  }

  #lengthen(
    from: Paths,
    { column, joint, to, ceiling }: { column: Column; joint: UprightJoint; to: Paths; ceiling: number },
  ): void {
    const { stack } = column;
    const added = stack.total + joint.score.total;
    for (const { cuts, paths } of from.values()) {
      const least = (paths[0] as Path).total + added;
      if (least >= ceiling) continue;
      const crowded = this.#toEnd ? this.#crowding(cuts, stack) : 0;
      for (const before of paths) {
        const total = before.total + added + crowded * WEIGHTS.crowded;
        if (total < ceiling)
          offer(to, this.#toEnd ? stack.print : 0, total, { before, column, joint, crowded });
      }
    }
  }

  /** Costs only grow: what is as dear as all that are kept at the end of the stretch cannot come back. */
  #ceiling(into: Paths): number {
    const kept = this.#toEnd ? undefined : into.get(0)?.paths[1];
    return Math.min(this.#limit, kept?.total ?? Number.POSITIVE_INFINITY);
  }

  /** Whether this column, or all that must still come, takes every path over what is kept. */
  #isTooDear(
    x: Interval,
    at: { readonly from: Paths; readonly into: Paths; readonly least: number; readonly after: number },
  ): boolean {
    if (this.#toEnd) return at.least + this.#toEnd.column(x) + at.after >= this.#limit;
    const column = this.#floor?.(x) ?? columnFloor(this.#planner, x);
    return at.least + column >= this.#ceiling(at.into) || this.isHopeless(at.from, x[0]);
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

  /** @param limit what costs as much is left out */
  #stacks(x: Interval, limit: number): readonly Stack[] {
    if (this.#floor) return [unstacked(this.#floor(x))];
    return this.#toEnd
      ? everyStack(this.#planner, x, { most: this.#most, limit })
      : [cheapestStack(this.#planner, x)];
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
