/** Linear programmes of a few free unknowns under many conditions, as fitting a plane to readings asks. */

/** `coefficients · x ≥ least`. */
export interface Condition {
  readonly coefficients: readonly number[];
  readonly least: number;
}

export type LinearOutcome =
  | {
      readonly kind: "best";
      readonly x: readonly number[];
      readonly value: number;
      /** Conditions that hold the answer where it is, by their places. */
      readonly holding: readonly number[];
    }
  /** No x meets every condition. */
  | { readonly kind: "impossible" }
  /** The value falls without end. */
  | { readonly kind: "unbounded" };

/** Sums of products nearer zero than this are zero: the unknowns are to be scaled so that they are of the size of one. */
const NOTHING = 1e-9;

/**
 * The least `cost · x`, x of either sign, under the conditions. The dual has a row for each unknown and a column for each condition, so it is
 * the dual that is solved, by the simplex method on a tableau; x is read from its prices. Entering and leaving columns are chosen by their place
 * (Bland 1977, Mathematics of Operations Research 2:103), which ends always and gives the same answer to the same question.
 */
export function leastCost(cost: readonly number[], conditions: readonly Condition[]): LinearOutcome {
  const rows = cost.length;
  const count = conditions.length;
  // Σ yᵢ aᵢ = cost with y ≥ 0; one more column a row to begin with, all of it to be driven out.
  const signs = cost.map((value) => (value < 0 ? -1 : 1));
  const tableau = cost.map((value, row) => [
    ...conditions.map(({ coefficients }) => (signs[row] as number) * (coefficients[row] as number)),
    ...cost.map((_, other) => (other === row ? 1 : 0)),
    Math.abs(value),
  ]);
  const basis = cost.map((_, row) => count + row);
  const beginning = [...conditions.map(() => 0), ...cost.map(() => 1)];
  if (!minimise(tableau, basis, beginning, count + rows)) return { kind: "impossible" };
  const left = basis.reduce(
    (sum, column, row) => sum + (column >= count ? ((tableau[row] as number[])[count + rows] ?? 0) : 0),
    0,
  );
  // No prices can pay for the cost: the value falls without end.
  if (left > NOTHING * (1 + Math.max(...cost.map(Math.abs)))) return { kind: "unbounded" };
  driveOut(tableau, basis, count);
  const worth = [...conditions.map(({ least }) => -least), ...cost.map(() => 0)];
  if (!minimise(tableau, basis, worth, count)) return { kind: "impossible" };
  // A column of the beginning costs nothing by now: what it is short of that is the price of its row, which is the unknown.
  const x = signs.map((sign, row) => sign * reducedCost(tableau, basis, worth, count + row) + 0);
  const holding = basis.flatMap((column, row) =>
    column < count && ((tableau[row] as number[])[count + rows] ?? 0) > NOTHING ? [column] : [],
  );
  return {
    kind: "best",
    x,
    value: x.reduce((sum, value, i) => sum + value * (cost[i] as number), 0),
    holding: holding.sort((a, b) => a - b),
  };
}

/** Takes columns of the beginning that stand at nothing out of the basis, lest they grow again. */
function driveOut(tableau: number[][], basis: number[], columns: number): void {
  for (const [i, row] of tableau.entries()) {
    if ((basis[i] as number) < columns) continue;
    const entering = row.findIndex(
      (value, column) => column < columns && Math.abs(value) > NOTHING && !basis.includes(column),
    );
    if (entering < 0) continue;
    pivot(tableau, i, entering);
    basis[i] = entering;
  }
}

function reducedCost(
  tableau: readonly (readonly number[])[],
  basis: readonly number[],
  cost: readonly number[],
  column: number,
): number {
  return tableau.reduce(
    (left, row, i) => left - (cost[basis[i] as number] as number) * (row[column] as number),
    cost[column] as number,
  );
}

/** Brings the tableau to its least cost over the first `columns`; false where that falls without end. */
function minimise(tableau: number[][], basis: number[], cost: readonly number[], columns: number): boolean {
  for (;;) {
    let entering = -1;
    for (let column = 0; column < columns && entering < 0; column++) {
      if (!basis.includes(column) && reducedCost(tableau, basis, cost, column) < -NOTHING) entering = column;
    }
    if (entering < 0) return true;
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, row] of tableau.entries()) {
      const by = row[entering] as number;
      if (by <= NOTHING) continue;
      const ratio = (row.at(-1) as number) / by;
      const earlier = leaving >= 0 && (basis[i] as number) < (basis[leaving] as number);
      if (ratio < least - NOTHING || (ratio <= least + NOTHING && earlier)) {
        least = Math.min(ratio, least);
        leaving = i;
      }
    }
    if (leaving < 0) return false;
    pivot(tableau, leaving, entering);
    basis[leaving] = entering;
  }
}

function pivot(tableau: number[][], leaving: number, entering: number): void {
  const row = tableau[leaving] as number[];
  const by = row[entering] as number;
  for (let i = 0; i < row.length; i++) row[i] = (row[i] as number) / by;
  for (const other of tableau) {
    if (other === row) continue;
    const times = other[entering] as number;
    if (times === 0) continue;
    for (let i = 0; i < row.length; i++) other[i] = (other[i] as number) - times * (row[i] as number);
  }
}
