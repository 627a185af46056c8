/**
 * Where a course that is longer than its stock is joined. Butts lie over battens; neighbouring courses keep a bay apart
 * and the same butt comes back only after two courses, where the length allows it. Before that, they keep from ducts.
 */
import type { Interval } from "../../geometry/interval.ts";

/** A duct, and the stretch of a course in which no butt should lie for it. */
export interface DuctChord {
  readonly of: string;
  readonly x: Interval;
}

export interface ButtProblem {
  /** The run to fill, from end to end. */
  readonly run: Interval;
  /** What the boards at its ends are longer behind than at their face, left and right: a mitre's long points (mm). */
  readonly behind: readonly [number, number];
  /** Centres at which a butt may lie, left to right. */
  readonly candidates: readonly number[];
  readonly endGap: number;
  readonly maxLength: number;
  /** Least length of an end piece: two bays. */
  readonly minLength: number;
  /** Butts of the courses below, nearest first. */
  readonly below: readonly (readonly number[])[];
  /** Distance that butts of neighbouring courses keep (one bay). */
  readonly stagger: number;
  readonly ducts: readonly DuctChord[];
}

export interface ButtResult {
  readonly butts: readonly number[];
  /** Butts closer than the stagger to one in the two courses below. */
  readonly conflicts: number;
  /** Pieces longer than the stock or shorter than two bays. */
  readonly misfits: number;
  /** Butts that no other batten could take from in or beside a duct. */
  readonly besideDucts: readonly ButtAtDuct[];
  /** Where butts would lie but for a duct, and lie no longer. */
  readonly moved: readonly ButtAtDuct[];
}

export interface ButtAtDuct {
  readonly at: number;
  readonly of: string;
}

const CONFLICT_COST = 100;
const DUCT_COST = 5000;
const MISFIT_COST = 100_000;
const PIECE_COST = 30;

export function placeButts(problem: ButtProblem): ButtResult {
  const [from, to] = problem.run;
  const isWhole = to - from + problem.behind[0] + problem.behind[1] <= problem.maxLength;
  const regardless = isWhole ? [] : cheapestButts({ ...problem, ducts: [] });
  const near = atDucts(problem, regardless);
  const butts = near.length > 0 ? cheapestButts(problem) : regardless;
  return {
    butts,
    conflicts: countConflicts(problem, butts),
    misfits: isWhole ? 0 : countMisfits(problem, [from, ...butts, to]),
    besideDucts: atDucts(problem, butts),
    moved: near.filter(({ at }) => !butts.includes(at)),
  };
}

function atDucts({ ducts }: ButtProblem, butts: readonly number[]): ButtAtDuct[] {
  return butts.flatMap((at) => {
    const duct = ducts.find(({ x }) => at > x[0] && at < x[1]);
    return duct ? [{ at, of: duct.of }] : [];
  });
}

/** The cheapest chain of butts by dynamic programming over the candidates: exact, and linear in the run's length. */
function cheapestButts(problem: ButtProblem): number[] {
  const [from, to] = problem.run;
  const inner = problem.candidates.filter(
    (x) => x - problem.endGap / 2 > from && x + problem.endGap / 2 < to,
  );
  const nodes = [from, ...inner, to];
  const last = nodes.length - 1;
  const costs = nodes.map((_, j) => (j === 0 ? 0 : Number.POSITIVE_INFINITY));
  const backs = nodes.map(() => -1);
  for (let j = 1; j <= last; j++) {
    const ownCost = j < last ? buttCost(problem, nodes[j] as number) : 0;
    for (let i = j - 1; i >= 0; i--) {
      const length = pieceLength(problem, nodes, i, j);
      const cost = (costs[i] as number) + pieceCost(problem, length) + ownCost;
      if (cost < (costs[j] as number) - 1e-9) {
        costs[j] = cost;
        backs[j] = i;
      }
      if (length > 2 * problem.maxLength) break;
    }
  }
  const butts: number[] = [];
  for (let j = backs[last] as number; j > 0; j = backs[j] as number) butts.unshift(nodes[j] as number);
  return butts;
}

/** Between the long points, which is what the stock must give. */
function pieceLength(
  { endGap, behind }: ButtProblem,
  nodes: readonly number[],
  i: number,
  j: number,
): number {
  const left = i === 0 ? -behind[0] : endGap / 2;
  const right = j === nodes.length - 1 ? -behind[1] : endGap / 2;
  return (nodes[j] as number) - right - ((nodes[i] as number) + left);
}

function pieceCost({ maxLength, minLength }: ButtProblem, length: number): number {
  // No misfit is worth less than what it spares, however small; too long is worse than any number too short.
  if (length > maxLength) return MISFIT_COST * (100 + (length - maxLength) / maxLength);
  if (length < minLength) return MISFIT_COST * (2 - length / minLength) + PIECE_COST;
  return PIECE_COST * (1 + (1 - length / maxLength) ** 2);
}

function buttCost(problem: ButtProblem, butt: number): number {
  return conflictCost(problem, butt) + DUCT_COST * atDucts(problem, [butt]).length;
}

function conflictCost(problem: ButtProblem, butt: number): number {
  return problem.below.slice(0, 2).reduce((cost, course, i) => {
    const near = course.filter((other) => Math.abs(other - butt) < problem.stagger - 1e-6).length;
    const same = course.filter((other) => Math.abs(other - butt) < 1e-6).length;
    // In the course right below a bay must lie between; two below, only the same butt offends.
    return cost + CONFLICT_COST * (i === 0 ? near : same);
  }, 0);
}

function countConflicts(problem: ButtProblem, butts: readonly number[]): number {
  return butts.filter((butt) => conflictCost(problem, butt) > 0).length;
}

function countMisfits(problem: ButtProblem, nodes: readonly number[]): number {
  return nodes.slice(1).filter((_, i) => {
    const length = pieceLength(problem, nodes, i, i + 1);
    return length > problem.maxLength || length < problem.minLength;
  }).length;
}
