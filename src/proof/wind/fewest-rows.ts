/** The fewest level rows of screws in a sheet that hold, evenly spaced so that their heads read as lines. */

export interface RowsAsked {
  /** Height of the sheet (mm). */
  readonly heightMm: number;
  /** Least and most distance of the outermost rows from the edges (mm). */
  readonly edgeMm: readonly [least: number, most: number];
  /** Least and most distance between rows (mm). */
  readonly spacingMm: readonly [least: number, most: number];
  /** Whether rows at these heights over the lower edge hold; more closely spaced ones never hold less. */
  readonly hold: (rows: readonly number[]) => boolean;
}

/** Two rows at least. */
const FEWEST = 2;

/** Heights of the rows over the lower edge; undefined where no number of rows within the bands holds. */
export function fewestRows({ heightMm, edgeMm, spacingMm, hold }: RowsAsked): number[] | undefined {
  const [least, most] = spacingMm;
  for (let count = FEWEST; (count - 1) * least <= heightMm - 2 * edgeMm[0]; count++) {
    const from = Math.max(edgeMm[0], (heightMm - (count - 1) * most) / 2);
    const to = Math.min(edgeMm[1], (heightMm - (count - 1) * least) / 2);
    if (from > to) continue;
    // Half a space at the edges shares the height out evenly: the least that the worst row can hold.
    const edge = Math.min(Math.max(heightMm / (2 * count), from), to);
    const space = (heightMm - 2 * edge) / (count - 1);
    const rows = Array.from({ length: count }, (_, i) => edge + i * space);
    if (hold(rows)) return rows;
  }
  return undefined;
}
