/**
 * How one column of a sheet zone is stacked: broken by the openings that span it, and parted into rows between them. A
 * level joint lies above its line, so that the sheet below ends on the line.
 */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { snap, toGridSteps } from "../../units/length.ts";
import type { Planner } from "./planner.ts";
import { type ColumnStrip, cheapestRun, costOfCut, everyRun, factsOf, type Run } from "./runs.ts";
import { addScores, levelJointScore, NO_COST, pieceCost, pieceScore, type Score, WEIGHTS } from "./score.ts";
import { tallestAt } from "./shapes.ts";

export interface Stack {
  /** Heights of the sheets, from the bottom up. */
  readonly rows: readonly Interval[];
  /** Level joint strips, those over openings included. */
  readonly joints: readonly Interval[];
  /** Lines of the joints between two sheets. */
  readonly cuts: readonly number[];
  readonly total: number;
  /** Tells stacks with other cuts apart. */
  readonly print: number;
}

const PRINT_MODULUS = 2_147_483_629;

export function cheapestStack(planner: Planner, x: Interval): Stack {
  const { column, parts, over } = broken(planner, x);
  let stack = bare(over);
  for (const part of parts) stack = append(stack, cheapestRun(planner, column, part));
  return stack;
}

export interface Wanted {
  readonly most: number;
  /** What costs as much is left out. */
  readonly limit: number;
}

/** The cheapest of all stacks whose parts take as few rows as fit or one more, cheapest first. */
export function everyStack(planner: Planner, x: Interval, wanted: Wanted): Stack[] {
  const { column, parts, over } = broken(planner, x);
  let stacks = [bare(over)];
  const keep = (runs: readonly Run[]): Run[] => useful(runs, wanted, cutsOf);
  for (const part of parts) {
    const runs = everyRun(planner, column, { part, keep, limit: wanted.limit });
    stacks = useful(
      stacks.flatMap((stack) => runs.map((run) => append(stack, run))),
      wanted,
      ({ cuts }) => cuts,
    );
  }
  return stacks;
}

/**
 * The cheapest that could serve beside some neighbour: one is beaten wherever it stands by another that costs no
 * more and has no joint of its own. The two cheapest stay in any case, to tell what comes next.
 */
function useful<T extends { readonly total: number }>(
  all: readonly T[],
  { most, limit }: Wanted,
  cuts: (one: T) => readonly number[],
): T[] {
  const kept: { readonly one: T; readonly own: readonly number[] }[] = [];
  for (const [i, one] of [...all].sort((a, b) => a.total - b.total).entries()) {
    if (kept.length >= most || one.total >= limit) break;
    const own = cuts(one);
    if (i < 2 || !kept.some((other) => other.own.every((cut) => own.includes(cut)))) kept.push({ one, own });
  }
  return kept.map(({ one }) => one);
}

function cutsOf({ rows }: Run): number[] {
  return rows.slice(1).map((_, i) => (rows[i] as Interval)[1]);
}

/** No more than any stack of the column costs, told without stacking it. */
export function columnFloor({ zone, module, needs }: Planner, x: Interval): number {
  const { keepOuts, rectangular, bounds } = zone.ground;
  const width = x[1] - x[0];
  let notches = 0;
  for (const { rect } of keepOuts) {
    if (rect.x[0] >= x[1] || rect.x[1] <= x[0]) continue;
    if (rect.x[0] <= x[0] && rect.x[1] >= x[1]) return rowsNeeded(needs, x) * WEIGHTS.sheet;
    // One sheet at the least is cut round it, unless it could hide in a joint or beyond a rake.
    const height = Math.min(rect.y[1], bounds.y[1]) - Math.max(rect.y[0], bounds.y[0]);
    if (rectangular && height > zone.cladding.joint) notches += 1;
  }
  const piece = pieceCost({ width, height: width, module, sliver: zone.sliver, notches, fits: true });
  return piece + Math.max(0, rowsNeeded(needs, x) - 1) * WEIGHTS.sheet;
}

/** Sheets one over the other that some place of the column needs at the least. */
function rowsNeeded(needs: Planner["needs"], x: Interval): number {
  let rows = 0;
  for (const need of needs) {
    if (need.x[0] >= x[1]) break;
    if (need.x[1] > x[0] && need.bridged > rows) rows = need.bridged;
  }
  return rows;
}

/** What a stack's total is made of. */
export function stackScore(planner: Planner, x: Interval, { rows, cuts }: Stack): Score {
  const { column } = broken(planner, x);
  return [
    ...rows.map((y) => pieceScore(factsOf(planner, column, y))),
    ...cuts.map((cut) => levelJointScore(costOfCut(planner, cut))),
  ].reduce(addScores, NO_COST);
}

/** A column told by its cost alone. */
export function unstacked(total: number): Stack {
  return { ...bare(NO_JOINTS), total };
}

function bare(joints: readonly Interval[]): Stack {
  return { rows: [], joints, cuts: [], total: 0, print: 0 };
}

function append(stack: Stack, { rows, total }: Run): Stack {
  const all = stack.rows.length === 0 ? rows : [...stack.rows, ...rows];
  let { joints, cuts, print } = stack;
  if (rows.length > 1) {
    const between: Interval[] = [];
    const lines: number[] = [];
    for (let i = 1; i < rows.length; i++) {
      const [line, next] = [(rows[i - 1] as Interval)[1], (rows[i] as Interval)[0]];
      between.push([line, next]);
      lines.push(line);
      print = printed(print, line);
    }
    joints = joints.length === 0 ? between : [...joints, ...between];
    cuts = cuts.length === 0 ? lines : [...cuts, ...lines];
  }
  return { rows: all, joints, cuts, total: stack.total + total, print };
}

function printed(print: number, line: number): number {
  return (((print * 17 + toGridSteps(line)) % PRINT_MODULUS) + PRINT_MODULUS) % PRINT_MODULUS;
}

interface Broken {
  readonly column: ColumnStrip;
  readonly parts: readonly Interval[];
  /** The joints on the heads of openings that span the column. */
  readonly over: readonly Interval[];
}

export function broken({ zone, shapes, extentOf }: Planner, x: Interval): Broken {
  const { ground, cladding } = zone;
  const spanning: Interval[] = [];
  const cutInto: Interval[] = [];
  for (const { rect } of ground.keepOuts) {
    if (rect.x[0] <= x[0] && rect.x[1] >= x[1]) spanning.push(rect.y);
    else if (overlaps(rect.x, x)) cutInto.push(rect.y);
  }
  const width = x[1] - x[0];
  const column: ColumnStrip = { width, tallest: tallestAt(shapes, width), cutInto };
  const [low, high] = extentOf(x);
  if (spanning.length === 0) return { column, parts: [[low, high]], over: NO_JOINTS };
  const parts: Interval[] = [];
  const over: Interval[] = [];
  let from = low;
  for (const [sill, head] of spanning.sort((a, b) => a[0] - b[0])) {
    if (sill >= high || head <= low) continue;
    if (sill > from) parts.push([from, sill]);
    // Over an opening the joint lies on the clearance, as it does beside the opening.
    const top = snap(head + cladding.joint);
    if (head < high) over.push([head, Math.min(top, high)]);
    from = Math.max(from, top);
  }
  if (from < high) parts.push([from, high]);
  return { column, parts, over };
}

const NO_JOINTS: readonly Interval[] = [];
