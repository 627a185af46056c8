/** Columns of text. */

/**
 * Lines with the cells under one another; the last column is left as it is. Columns named in `right` stand at their right
 * end, as figures do.
 */
export function table(
  rows: readonly (readonly string[])[],
  { indent = 0, right = [] }: { indent?: number; right?: readonly number[] } = {},
): string {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, at) =>
    Math.max(...rows.map((row) => [...(row[at] ?? "")].length)),
  );
  return rows
    .map((row) => {
      const cells = row.map((cell, at) => {
        const gap = " ".repeat((widths[at] ?? 0) - [...cell].length);
        if (right.includes(at)) return gap + cell;
        return at === columns - 1 ? cell : cell + gap;
      });
      return `${" ".repeat(indent)}${cells.join("  ")}`.trimEnd();
    })
    .join("\n");
}
