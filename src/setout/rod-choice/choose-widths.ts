/** The widths themselves: every single width and every pair searched, the best ranked with their numbers. */
import { toGridSteps } from "../../units/length.ts";
import { problemFaults } from "../rod/faults.ts";
import { type GridRod, toGridRod } from "../rod/grid-rod.ts";
import type { RippedBoard, RodProblem, RodProblemFault } from "../rod/problem.ts";
import type { WidthsOutcome, WidthsQuestion } from "./question.ts";
import { Queue } from "./queue.ts";
import { rippedSets, type SetWithout } from "./ripped-sets.ts";
import { spreadBound } from "./spread-bound.ts";
import { isBefore, lookInto, type Standing, spreadParts } from "./standing.ts";
import { supplyOf } from "./supply.ts";
import { type Chosen, told } from "./told.ts";

const MOST_CHOICES = 20;

/** Most widths in the range: all their pairs are looked at. */
const MOST_WIDTHS_IN_RANGE = 400;

/**
 * The sets of one or two widths with the best rods, best first: fewest secondary lines missed, then least spread of gaps, then the most
 * timber made use of, then gaps nearest to the preferred one, then fewest boards. A pair is judged by the rod that `solveRod` puts first of
 * those that use both widths. Exact: sets are looked into in the order of bounds that favour them, so that none left aside can be better
 * than one listed.
 *
 * Sets that need ripped boards fill up a list that would be short, after all others: a ripped board can make any spread small, so spreads
 * with and without one say nothing of each other.
 */
export function chooseWidths(question: WidthsQuestion): WidthsOutcome {
  const faults = questionFaults(question);
  if (faults.length > 0) return { kind: "unusable", faults };
  const most = question.most ?? MOST_CHOICES;
  const supply = supplyOf(question);
  const rodFor = rodMaker(question);
  const sets = widthSets(question).filter((widths) => widths.every(supply.reaches));
  const boundOf = spreadBound(rodFor([toGridSteps(question.widths.from)]));
  const queue = new Queue<Standing>(isBefore);
  const without: SetWithout[] = [];
  const bounds = new Map<Standing["widths"], SetWithout>();
  for (const widths of sets) {
    const bound = { widths, ...boundOf(widths) };
    bounds.set(widths, bound);
    if (bound.unfilled > 0) without.push(bound);
    else
      queue.push({
        widths,
        known: "counts",
        missed: 0,
        spread: spreadParts(bound.spread, "counts"),
        yield: supply.bestYield(widths),
        offset: 0,
        boards: 0,
      });
  }
  let solved = 0;
  const chosen: Chosen[] = [];
  while (chosen.length < most) {
    const standing = queue.pop();
    if (standing === undefined) break;
    const { widths, found } = standing;
    const rod = rodFor(widths);
    if (found !== undefined) {
      chosen.push({ widths, boards: [], rod, found });
      continue;
    }
    const further = lookInto(standing, rod, (one) => supply.yieldOf(rod, one));
    if (further?.known !== "lines") solved += 1;
    if (further !== undefined) queue.push(further);
    else without.push(bounds.get(widths) ?? { widths, unfilled: 0, spread: 0 });
  }
  const missing = most - chosen.length;
  const ripped = missing > 0 ? rippedSets(without, rodFor) : { ranked: [], tried: 0 };
  return {
    kind: "ranked",
    choices: told([...chosen, ...ripped.ranked.slice(0, missing)], supply, question.supply !== undefined),
    proof: {
      sets: sets.length,
      solved,
      exhaustive: true,
      ripped: { tried: ripped.tried, of: missing > 0 ? without.length : 0 },
    },
  };
}

/** Widths of the range in grid steps, alone and in pairs, the narrower first. */
function widthSets({ widths: { from, to, step = 1 }, leastDifference = 0 }: WidthsQuestion): number[][] {
  const [first, last, by] = [toGridSteps(from), toGridSteps(to), toGridSteps(step)];
  const apart = toGridSteps(leastDifference);
  const widths: number[] = [];
  for (let width = first; width <= last; width += by) widths.push(width);
  return [
    ...widths.map((width) => [width]),
    ...widths.flatMap((narrow, index) =>
      widths.slice(index + 1).flatMap((wide) => (wide - narrow >= apart ? [[narrow, wide]] : [])),
    ),
  ];
}

/** Makes the rod for a set; segments, lines and band are put on the grid once. */
function rodMaker(
  question: WidthsQuestion,
): (widths: readonly number[], ripped?: readonly RippedBoard[]) => GridRod {
  const shared = toGridRod(problemOf(question, [question.widths.from]));
  return (widths, ripped = []) => {
    const odd = [...new Set(ripped.map((board) => toGridSteps(board.width)))];
    const segments = shared.segments.map((segment) => {
      const own = ripped.find((board) => board.segment === segment.id);
      const width = own && toGridSteps(own.width);
      return { ...segment, ripped: [...widths.map(() => 0), ...odd.map((one) => (one === width ? 1 : 0))] };
    });
    return { ...shared, segments, widths: [...widths, ...odd], regularWidths: widths.length };
  };
}

function problemOf(question: WidthsQuestion, widths: readonly number[]): RodProblem {
  const { segments, gapBand, maxEqualTouching, secondaryLines, preferredGap } = question;
  return {
    segments,
    widths,
    gapBand,
    maxEqualTouching,
    secondaryLines,
    ...(preferredGap !== undefined && { preferredGap }),
  };
}

/** The faults of the rod with the narrowest width and the one next to it, which makes the most boards, and of the range itself. */
function questionFaults(question: WidthsQuestion): RodProblemFault[] {
  const { from, to, step = 1 } = question.widths;
  const faults: RodProblemFault[] = [];
  for (const [field, value] of Object.entries({ from, to, step })) {
    if (!Number.isFinite(value)) faults.push({ code: "not-a-number", field: `widths/${field}`, value });
    else if (toGridSteps(value) <= 0)
      faults.push({ code: "width-not-positive", field: `widths/${field}`, value });
  }
  if (faults.length > 0) return faults;
  const count = Math.floor((to - from) / step) + 1;
  if (count < 1) return [{ code: "no-widths", field: "widths", value: 0 }];
  if (count > MOST_WIDTHS_IN_RANGE) return [{ code: "too-many-widths", field: "widths", value: count }];
  const widths = toGridSteps(from + step) <= toGridSteps(to) ? [from, from + step] : [from];
  return problemFaults(problemOf(question, widths));
}
