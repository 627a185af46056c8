import { fromGridSteps, toGridSteps } from "../../units/length.ts";
import { bestFew } from "./alternatives.ts";
import { clearOfDucts } from "./clear-of-ducts.ts";
import { countChoices, countsCanKeepLook, nearestOutsideBand } from "./counts.ts";
import { problemFaults } from "./faults.ts";
import { isFeasible } from "./feasible.ts";
import { type GridRod, toGridRod } from "./grid-rod.ts";
import { nearestChanges } from "./nearest-changes.ts";
import { orderer } from "./order.ts";
import type {
  GapOutsideBand,
  RodMerit,
  RodOutcome,
  RodSolution,
  RuleCost,
  SegmentRefusal,
} from "./outcome.ts";
import type { RodProblem } from "./problem.ts";
import type { Meetable } from "./reach.ts";
import { bestCounts, meetableTable, prepareSearch, type RodSearch } from "./search.ts";
import { buildSolution, gapInMm, meritOf, summarise, widthCounts } from "./solution.ts";

/** How many rods with other counts are shown beside the best. */
const ALTERNATIVES = 3;

/** How much the band is widened at either end to show what it costs, in millimetres. */
const BAND_EASED_BY_MM = 1;

/**
 * The best rod there is, by an exact search, or the proof that there is none with the least changes that would make one.
 *
 * Hard rules, in this order: the boards and gaps fill every segment exactly with one gap per segment within the band; no more than
 * `maxEqualTouching` boards of one width touch, borders included. Among the rods that keep them, in this order: fewest secondary lines
 * missed; least spread of gaps between segments; least sum of distances from the preferred gap; fewest boards. The order of boards then
 * has the fewest repeats of patterns of up to three boards (two in a very long rod), and the widest board first where that leaves a choice.
 * Where that rod leaves a sliver beside a duct, `clearOfDucts` seeks another.
 *
 * Gaps that vary within a segment would make no rod possible that is not: gaps within the band have their mean within the band, and the
 * same counts fit with that mean throughout.
 */
export function solveRod(problem: RodProblem): RodOutcome {
  return solved(problem, { weighed: true });
}

/** The same rod and runners-up, without what its rules cost and what would mend one that is impossible: enough to draw it. */
export function solveRodToDraw(problem: RodProblem): RodOutcome {
  return solved(problem, { weighed: false });
}

function solved(problem: RodProblem, { weighed }: { readonly weighed: boolean }): RodOutcome {
  const faults = problemFaults(problem);
  if (faults.length > 0) return { kind: "unusable", faults };
  const rod = toGridRod(problem);
  const choices = meetableTable(rod);
  const proof = {
    examined: choices.reduce((product, list) => product * list.length, 1),
    exhaustive: true,
  } as const;
  const few = bestFew(prepareSearch(rod, choices), ALTERNATIVES);
  const [best] = few;
  const kept = best && meritOf(rod, best);
  const ruleCosts = weighed ? costOfRules(rod, choices, kept) : [];
  const order = orderer(rod);
  const [solution, ...alternatives] = few.flatMap((found) => {
    const boards = order(found.picks.map((reach) => reach.choice));
    return boards === undefined ? [] : [buildSolution(problem, rod, found, boards)];
  });
  if (solution === undefined) {
    const segments = refusals(rod);
    const changes = weighed ? nearestChanges(rod) : [];
    return { kind: "impossible", segments, nearestChanges: changes, ruleCosts, proof };
  }
  const clear = best && clearOfDucts(problem, { rod, choices }, { found: best, solution });
  if (!clear) return { kind: "solved", best: solution, alternatives, ruleCosts, proof };
  const others = [solution, ...alternatives].filter((one) => !sameCounts(one, clear)).slice(0, ALTERNATIVES);
  return { kind: "solved", best: clear, alternatives: others, ruleCosts, proof };
}

/** Whether there is a rod at all: the first question of `solveRod`, at a small part of its work. */
export function isPossible(problem: RodProblem): boolean {
  return problemFaults(problem).length === 0 && isFeasible(toGridRod(problem));
}

/** The best rod alone, as `solveRod` puts it first; `undefined` where there is none or the problem cannot be worked. */
export function bestRod(problem: RodProblem): RodSolution | undefined {
  if (problemFaults(problem).length > 0) return undefined;
  const rod = toGridRod(problem);
  const choices = meetableTable(rod);
  const found = bestCounts(prepareSearch(rod, choices));
  const boards = found && orderer(rod)(found.picks.map((reach) => reach.choice));
  const solution = found && boards && buildSolution(problem, rod, found, boards);
  return solution && (clearOfDucts(problem, { rod, choices }, { found, solution }) ?? solution);
}

function sameCounts(one: RodSolution, other: RodSolution): boolean {
  return one.segments.every(({ counts }, index) =>
    counts.every(({ width, count }) =>
      other.segments[index]?.counts.some((same) => same.width === width && same.count === count),
    ),
  );
}

function costOfRules(
  rod: GridRod,
  choices: readonly (readonly Meetable[])[],
  kept: RodMerit | undefined,
): RuleCost[] {
  const costs: RuleCost[] = [];
  const add = (rule: RuleCost["rule"], eased: RodSearch, band?: readonly [number, number]): void => {
    const found = bestCounts(eased);
    if (found === undefined) return;
    const withoutIt = summarise(eased.rod, found);
    const saves = kept === undefined ? {} : { saves: saving(kept, withoutIt.merit) };
    costs.push({ rule, ...(band === undefined ? {} : { easedBand: band }), withoutIt, ...saves });
  };
  if (rod.maxTouching !== Number.POSITIVE_INFINITY) {
    add("look", prepareSearch({ ...rod, maxTouching: Number.POSITIVE_INFINITY }, choices));
  }
  if (rod.lines.length > 0) {
    const unheeded = choices.map((list) =>
      list.map(({ choice }) => ({ choice, meetings: [], mostLines: 0 })),
    );
    add("secondary", prepareSearch({ ...rod, lines: [] }, unheeded));
  }
  const by = toGridSteps(BAND_EASED_BY_MM);
  const band = [Math.max(0, rod.band[0] - by), rod.band[1] + by] as const;
  add("band", prepareSearch({ ...rod, band }), [fromGridSteps(band[0]), fromGridSteps(band[1])]);
  return costs;
}

function saving(kept: RodMerit, eased: RodMerit): RodMerit {
  return {
    missedLines: kept.missedLines - eased.missedLines,
    gapSpread: kept.gapSpread - eased.gapSpread,
    gapOffset: kept.gapOffset - eased.gapOffset,
    boards: kept.boards - eased.boards,
  };
}

/** Why there is no rod: the segments no counts fit, or else those whose boards cannot be ordered by the look rule. */
function refusals(rod: GridRod): SegmentRefusal[] {
  const unfilled = rod.segments.filter((segment) => countChoices(rod, segment).length === 0);
  if (unfilled.length > 0) {
    return unfilled.map((segment) => {
      const { below, above } = nearestOutsideBand(rod, segment);
      const outside = (choice: typeof below): GapOutsideBand[] => {
        const gap = choice === undefined ? undefined : gapInMm(choice);
        return choice === undefined || gap === undefined ? [] : [{ gap, counts: widthCounts(rod, choice) }];
      };
      const [nearestBelow] = outside(below);
      const [nearestAbove] = outside(above);
      return {
        id: segment.id,
        reason: "no-count-fits",
        ...(nearestBelow === undefined ? {} : { nearestBelow }),
        ...(nearestAbove === undefined ? {} : { nearestAbove }),
      };
    });
  }
  const unordered = rod.segments.filter((segment) =>
    countChoices(rod, segment).every((choice) => !countsCanKeepLook(choice, rod.maxTouching)),
  );
  if (unordered.length > 0) return unordered.map(({ id }) => ({ id, reason: "equal-touching" }));
  return rod.segments.map(({ id }) => ({ id, reason: "equal-touching-across-borders" }));
}
