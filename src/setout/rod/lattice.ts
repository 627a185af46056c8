import type { CountVector } from "./counts.ts";

/**
 * The boards used so far, out of a segment's counts, as the nodes of a lattice: laying a board of width `w` steps from a node to
 * its neighbour `strides[w]` further on. Where the next board starts depends on the node alone, not on the way to it, so which
 * lines are met there does too; that is what keeps the search for an order small.
 */
export interface Lattice {
  readonly size: number;
  readonly strides: readonly number[];
  /** By node and width (`node * widths + width`): the node after laying one more board of the width, -1 where all are used. */
  readonly onward: Int32Array;
}

export function latticeOf({ counts }: Pick<CountVector, "counts">): Lattice {
  const strides: number[] = [];
  let size = 1;
  for (const count of counts) {
    strides.push(size);
    size *= count + 1;
  }
  const widths = counts.length;
  const onward = new Int32Array(size * widths).fill(-1);
  for (let width = 0; width < widths; width += 1) {
    const stride = strides[width] ?? 1;
    const period = stride * ((counts[width] ?? 0) + 1);
    for (let node = 0; node < size; node += 1) {
      if (node % period < period - stride) onward[node * widths + width] = node + stride;
    }
  }
  return { size, strides, onward };
}

/** The node that has used these boards. */
export function nodeOf(lattice: Pick<Lattice, "strides">, used: readonly number[]): number {
  return used.reduce((node, count, width) => node + count * (lattice.strides[width] ?? 0), 0);
}
