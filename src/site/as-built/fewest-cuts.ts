/** Which pieces must be cut, and at the least cost, so that all bounds on a face hold. */
import { type Axis, type Bound, type Gives, held } from "./bounds.ts";
import { cheapestCover, type LevelCosts } from "./cheapest-cover.ts";

export interface CutQuestion {
  readonly costs: readonly LevelCosts[];
  readonly axes: readonly Axis[];
}

export type FewestCuts =
  | {
      readonly kind: "found";
      /** Of each piece: 0 kept, 1 trimmed, 2 made again. */
      readonly levels: readonly number[];
      readonly cost: number;
      /** No choice costs less; the cost itself where the search came to its end. */
      readonly least: number;
    }
  /** Bounds that nothing gives up contradict each other: along which axis, and which. */
  | { readonly kind: "impossible"; readonly axis: number; readonly ring: readonly Bound[] };

/** Steps of a search that is asked for in passing: small faces are done within a hundredth of it. */
export const USUAL_STEPS = 200_000;

/** Rounds after which what is found so far is taken. */
const MOST_ROUNDS = 400;

/**
 * Rings of bounds that contradict each other are found one after another; each demands that one of its pieces gives. The cheapest levels that
 * meet all demands so far are tried until no ring is left: then none cheaper exists.
 */
export function fewestCuts(question: CutQuestion, steps = USUAL_STEPS): FewestCuts {
  const { costs } = question;
  const demands: (readonly Gives[])[] = [];
  let cover = cheapestCover(demands, costs, steps);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const found = demandsUnder(question, cover.levels);
    if (found.kind === "impossible") return found;
    if (found.demands.length === 0) return { kind: "found", ...cover };
    demands.push(...found.demands);
    const isLast = round === MOST_ROUNDS - 1;
    if (isLast || cover.least < cover.cost) {
      const levels = lowered(question, found.raised);
      return { kind: "found", levels, cost: costOf(costs, levels), least: cover.least };
    }
    cover = cheapestCover(demands, costs, steps);
  }
  return { kind: "found", ...cover };
}

function costOf(costs: readonly LevelCosts[], levels: readonly number[]): number {
  return levels.reduce(
    (sum, level, piece) => sum + (level === 0 ? 0 : ((costs[piece] as LevelCosts)[level - 1] ?? 0)),
    0,
  );
}

type Demanded =
  | {
      readonly kind: "demands";
      readonly demands: readonly (readonly Gives[])[];
      readonly raised: readonly number[];
    }
  | { readonly kind: "impossible"; readonly axis: number; readonly ring: readonly Bound[] };

/** All rings that share no way out, and the levels at which none is left. */
function demandsUnder({ costs, axes }: CutQuestion, levels: readonly number[]): Demanded {
  const raised = [...levels];
  const demands: (readonly Gives[])[] = [];
  for (const [axis, { unknowns, bounds }] of axes.entries()) {
    for (;;) {
      const answer = held(unknowns, standing(bounds, raised));
      if (answer.holds) break;
      const ways = waysOut(answer.ring, costs);
      if (ways.length === 0) return { kind: "impossible", axis, ring: answer.ring };
      demands.push(ways);
      for (const { piece, level } of ways) raised[piece] = Math.max(raised[piece] as number, level);
    }
  }
  return { kind: "demands", demands, raised };
}

/** The bounds that nothing has given up. */
export function standing(bounds: readonly Bound[], levels: readonly number[]): Bound[] {
  return bounds.filter(({ gives }) => !gives || (levels[gives.piece] as number) < gives.level);
}

function waysOut(ring: readonly Bound[], costs: readonly LevelCosts[]): Gives[] {
  const ways: Gives[] = [];
  for (const { gives } of ring) {
    if (!gives || (costs[gives.piece] as LevelCosts)[gives.level - 1] === undefined) continue;
    if (!ways.some(({ piece, level }) => piece === gives.piece && level === gives.level)) ways.push(gives);
  }
  return ways;
}

/** Levels taken back one after another where the bounds still hold: what a search that was ended early is left with. */
function lowered({ axes, costs }: CutQuestion, from: readonly number[]): number[] {
  const levels = [...from];
  for (const piece of costs.keys()) {
    for (let level = 0; level < (from[piece] as number); level++) {
      const before = levels[piece] as number;
      levels[piece] = level;
      if (axes.every(({ unknowns, bounds }) => held(unknowns, standing(bounds, levels)).holds)) break;
      levels[piece] = before;
    }
  }
  return levels;
}
