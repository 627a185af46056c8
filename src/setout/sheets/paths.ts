/** Layouts so far, linked from right to left, and which of them are worth carrying on. */
import type { Interval } from "../../geometry/interval.ts";
import { toGridSteps } from "../../units/length.ts";
import type { UprightJoint } from "./candidates.ts";
import type { Stack } from "./stacks.ts";

export interface Column {
  readonly x: Interval;
  readonly stack: Stack;
}

export interface Path {
  readonly total: number;
  readonly print: number;
  readonly before?: Path;
  readonly column?: Column;
  /** The joint to the right of the column. */
  readonly joint?: UprightJoint;
  /** Pairs of level joints closer to those of the column before than the offset pattern asks. */
  readonly crowded?: number;
}

/** Paths that end at one joint, by the cuts of their last column where its neighbour must know them, else under 0. */
export type Paths = Map<number, { readonly cuts: readonly number[]; readonly paths: Path[] }>;

/** The best and the runner-up. */
const KEPT = 2;
const NOISE = 1e-9;
const PRINT_MODULUS = 2_147_483_629;

interface Offer {
  readonly before: Path;
  readonly column: Column;
  readonly joint: UprightJoint;
  readonly crowded: number;
}

/**
 * Keeps a path of this cost if it is among the two cheapest of its kind; of two with the same joints the cheaper stays.
 * @param kind the print of the last column's cuts where its neighbour must know them, else 0
 */
export function offer(into: Paths, kind: number, total: number, made: Offer): void {
  const { before, column, joint, crowded } = made;
  const { stack } = column;
  let found = into.get(kind);
  if (!found) {
    found = { cuts: stack.cuts, paths: [] };
    into.set(kind, found);
  }
  const { paths } = found;
  const worst = paths[KEPT - 1];
  if (worst && total >= worst.total - NOISE) return;
  const print =
    (before.print * 31 + toGridSteps(joint.x[0]) * 7 + stack.print + PRINT_MODULUS) % PRINT_MODULUS;
  const path: Path = { total, print, before, column, joint, crowded };
  const [first] = paths;
  if (first === undefined) paths.push(path);
  else if (first.print === print) {
    if (total < first.total) paths[0] = path;
  } else if (total < first.total - NOISE) {
    paths.length = 1;
    paths.unshift(path);
  } else paths[1] = path;
}
