/**
 * What no way of ripping a pile and cutting its strips can better: the least area of pieces that must be left out, and the least area
 * of boards that some pieces can be cut from. By column generation over whole boards; what prices come to is reckoned in whole
 * numbers, so that any prices give a bound that holds.
 */
import { toGridSteps } from "../units/length.ts";
import { Columns } from "./columns.ts";
import { boardWorth, columnJob, kindsOf, type PileKinds, type PileSizes, solve } from "./pile-columns.ts";

/** So many different sums are looked through for the next one at most; where there are more, they lie too near together to tell. */
const MOST_SUMS = 5000;
/** Areas are told apart from a millionth of a square metre. */
const DUST = 1e-6;
/** Squares of one step of the grid in a square metre: what is cut to whole steps has a whole number of them. */
const STEPS_A_SQUARE_METRE = toGridSteps(1000) ** 2;

/** The least area of pieces that every plan leaves out, m², reckoned in at most so many sums. */
export function leastLeftOut(sizes: PileSizes, work: number): number {
  const kinds = kindsOf(sizes);
  const bound = boundOf(sizes, kinds, work, {
    boards: kinds.boards.map(() => 0),
    out: kinds.types.map(({ area }) => area),
  });
  return nextSum(
    sizes.pieces.map(({ area }) => area),
    bound,
  );
}

/** The least area of boards that the pieces of these places can be cut from, m²; they can be. */
export function leastBoards(sizes: PileSizes, work: number, chosen: ReadonlySet<number>): number {
  const kinds = kindsOf(sizes, chosen);
  const bound = boundOf(sizes, kinds, work, { boards: kinds.boards.map(({ area }) => area) });
  return nextSum(
    sizes.boards.map(({ area }) => area),
    bound,
  );
}

/** The least sum of some of the areas that reaches the bound: whole boards and pieces come to no other. */
function nextSum(areas: readonly number[], bound: number): number {
  if (bound <= 0) return 0;
  // In whole numbers: sums of rounded areas drift, and one that just reaches the bound would seem not to.
  let sums = [0];
  for (const area of areas.map((one) => Math.round(one * STEPS_A_SQUARE_METRE))) {
    sums = [...new Set([...sums, ...sums.map((sum) => sum + area)])];
    if (sums.length > MOST_SUMS) return bound;
  }
  const reach = sums.map((sum) => sum / STEPS_A_SQUARE_METRE).filter((sum) => sum >= bound - DUST);
  return reach.length > 0 ? Math.min(...reach) : bound;
}

function boundOf(
  sizes: PileSizes,
  kinds: PileKinds,
  work: number,
  costs: { readonly boards: readonly number[]; readonly out?: readonly number[] },
): number {
  const worths = boardWorth(sizes, kinds);
  const columns = new Columns(columnJob(kinds, worths, costs));
  solve(columns, worths, work);
  return columns.bound;
}
