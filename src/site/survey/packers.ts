/** Packers of the stock put on one another behind a batten. */
import { snap } from "../../units/length.ts";

/** Sums are sought on this grid (mm): no packer is thinner. */
const GRID = 0.1;

export interface Packed {
  /** Thickest first (mm). */
  readonly packers: readonly number[];
  /** Their sum (mm). */
  readonly sum: number;
}

/**
 * The packers whose sum comes nearest to a thickness (mm), and of those the fewest; of two sums as near, the smaller, since a
 * batten that stands back a little is drawn in no further. None where the thickness is nearer to nothing.
 */
export function packersNear(thickness: number, stock: readonly number[]): Packed {
  const sizes = [...new Set(stock.map(toGrid))].filter((size) => size > 0).sort((a, b) => b - a);
  const most = Math.max(0, toGrid(thickness)) + (sizes[0] ?? 0);
  /** The fewest packers for each sum, and the last of them put on. */
  const fewest: ({ readonly count: number; readonly size: number } | undefined)[] = [{ count: 0, size: 0 }];
  for (let sum = 1; sum <= most; sum++) {
    for (const size of sizes) {
      const under = fewest[sum - size];
      const here = fewest[sum];
      if (under && (!here || under.count + 1 < here.count)) fewest[sum] = { count: under.count + 1, size };
    }
  }
  const reached = fewest.flatMap((one, sum) => (one ? [sum] : []));
  const off = (sum: number): number => Math.abs(sum * GRID - thickness);
  const best = reached.reduce((near, sum) => (off(sum) < off(near) - 1e-9 ? sum : near), 0);
  const packers: number[] = [];
  for (let left = best; left > 0; left -= (fewest[left] as { size: number }).size) {
    packers.push(snap((fewest[left] as { size: number }).size * GRID));
  }
  return { packers: packers.sort((a, b) => b - a), sum: snap(best * GRID) };
}

function toGrid(mm: number): number {
  return Math.round(mm / GRID);
}
