/** A rod found with ducts left aside, laid again so that they leave no sliver of a board, where that costs nothing that shows. */
import { toGridSteps } from "../../units/length.ts";
import { isBetter } from "./alternatives.ts";
import { type DuctStrip, sliversBeside } from "./duct-strips.ts";
import { MOST_TRIALS } from "./feasible.ts";
import type { GridRod } from "./grid-rod.ts";
import { orderer } from "./order.ts";
import type { RodSolution } from "./outcome.ts";
import type { DuctSpan, RodProblem } from "./problem.ts";
import type { Meetable } from "./reach.ts";
import { bestCounts, type CountsFound, prepareSearch } from "./search.ts";
import { buildSolution } from "./solution.ts";

/** A spread of gaps that nobody sees (mm; common practice). */
const UNSEEN_SPREAD_MM = 1;

interface Sliver extends DuctStrip {
  readonly duct: DuctSpan;
  readonly width: number;
}

/**
 * The rod that leaves slivers beside the fewest spans of ducts, and among such the best by the order of merit. A duct can be moved more
 * easily than an opening, so no secondary line is missed for it, and the gaps may spread by no more than before or than is seen. Nothing
 * where no such rod spares a duct. Exact, up to `MOST_TRIALS` sets of ducts.
 * @param found the best rod with ducts left aside, with its solution
 */
export function clearOfDucts(
  problem: RodProblem,
  at: { readonly rod: GridRod; readonly choices: readonly (readonly Meetable[])[] },
  { found, solution }: { readonly found: CountsFound; readonly solution: RodSolution },
): RodSolution | undefined {
  const { spans = [], leastShare = 0 } = problem.ducts ?? {};
  const slivers = sliversOf(solution, { spans, leastShare });
  const slivered = new Set(slivers.map(({ duct }) => duct)).size;
  let trials = 0;
  for (let letGo = 0; letGo < slivered; letGo += 1) {
    let best: { readonly counts: CountsFound; readonly rod: GridRod } | undefined;
    for (const kept of setsOf(spans, spans.length - letGo)) {
      trials += 1;
      if (trials > MOST_TRIALS) return undefined;
      const rod = { ...at.rod, clearOf: { spans: kept, leastShare } };
      const counts = bestCounts(prepareSearch(rod, at.choices));
      if (counts && isWorthIt(counts, found) && (!best || isBetter(counts, best.counts)))
        best = { counts, rod };
    }
    const boards = best && orderer(best.rod)(best.counts.picks.map((reach) => reach.choice));
    if (!best || !boards) continue;
    const clear = buildSolution(problem, best.rod, best.counts, boards);
    const left = new Set(sliversOf(clear, { spans, leastShare }).map(({ duct }) => duct));
    const spared = slivers.filter(({ duct }) => !left.has(duct)).sort((a, b) => a.left - b.left);
    const [worst] = spared;
    if (!worst) continue;
    return {
      ...clear,
      clearOf: {
        ducts: [...new Set(spared.flatMap(({ duct }) => duct.of))],
        without: solution,
        sliver: {
          of: worst.duct.of[0] ?? "",
          width: worst.width,
          left: worst.left,
          least: worst.least,
        },
      },
    };
  }
  return undefined;
}

function isWorthIt(counts: CountsFound, found: CountsFound): boolean {
  return (
    counts.linesMet === found.linesMet &&
    counts.spread <= Math.max(found.spread, toGridSteps(UNSEEN_SPREAD_MM))
  );
}

function sliversOf(
  { segments }: RodSolution,
  { spans, leastShare }: NonNullable<RodProblem["ducts"]>,
): Sliver[] {
  return spans.flatMap((duct) =>
    segments.flatMap(({ courses }) =>
      courses.flatMap(({ from, to, width }) =>
        sliversBeside([duct.from, duct.to], [from, to], { width, leastShare }).map((strip) => ({
          ...strip,
          duct,
          width,
        })),
      ),
    ),
  );
}

/** Every set of so many of them. */
function* setsOf<T>(all: readonly T[], count: number): Generator<readonly T[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let first = 0; first + count <= all.length; first += 1) {
    for (const rest of setsOf(all.slice(first + 1), count - 1)) yield [all[first] as T, ...rest];
  }
}
