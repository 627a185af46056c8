/**
 * The cheapest re-cuts by trying every choice there is. Whether a choice can be laid is told by another method than the program's: shortest paths
 * between all pairs (Floyd 1962, Communications of the ACM 5:345), where a ring less than nothing shows on the diagonal.
 */
import type { LevelCosts } from "../../src/site/as-built/cheapest-cover.ts";
import type { CutQuestion } from "../../src/site/as-built/fewest-cuts.ts";

/** Whether all bounds that the levels leave can hold together. */
export function canBeLaid({ axes }: CutQuestion, levels: readonly number[]): boolean {
  return axes.every(({ unknowns, bounds }) => {
    const d = Array.from({ length: unknowns }, (_, i) =>
      Array.from({ length: unknowns }, (_, j) => (i === j ? 0 : Infinity)),
    );
    for (const { from, to, most, gives } of bounds) {
      if (gives && (levels[gives.piece] as number) >= gives.level) continue;
      const line = d[from] as number[];
      line[to] = Math.min(line[to] as number, most);
    }
    for (let k = 0; k < unknowns; k++)
      for (let i = 0; i < unknowns; i++)
        for (let j = 0; j < unknowns; j++) {
          const over = ((d[i] as number[])[k] as number) + ((d[k] as number[])[j] as number);
          if (over < ((d[i] as number[])[j] as number)) (d[i] as number[])[j] = over;
        }
    return d.every((line, i) => (line[i] as number) >= 0);
  });
}

/** Undefined where no choice can be laid. */
export function cheapestOfAll({ costs, axes }: CutQuestion): number | undefined {
  let best: number | undefined;
  const search = (levels: readonly number[], cost: number): void => {
    if (levels.length === costs.length) {
      if ((best === undefined || cost < best) && canBeLaid({ costs, axes }, levels)) best = cost;
      return;
    }
    const [trim, remake] = costs[levels.length] as LevelCosts;
    search([...levels, 0], cost);
    if (trim !== undefined) search([...levels, 1], cost + trim);
    if (remake !== undefined) search([...levels, 2], cost + remake);
  };
  search([], 0);
  return best;
}
