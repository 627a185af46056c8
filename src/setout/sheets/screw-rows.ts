/**
 * The level rows that a zone's sheets are screwed in. The sheets that there are most of set the rows, evenly between
 * their edges; all others take those rows up where they pass them, so that the screw heads read as straight lines.
 */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { SheetCladding } from "../../project/schema/project.ts";
import type { DraftPiece } from "../draft.ts";

/** Rows of a sheet keep this from its level edges where the data sheet allows it. */
const ROW_FROM_EDGE_MM = 50;
/** For straight lines a sheet may take one row more than it needs. */
const MORE_ROWS = 1;

type DataSheet = SheetCladding["dataSheet"];

/** Heights of the rows that the zone's sheets share, from the bottom up. */
export function rowLevels(pieces: readonly DraftPiece[], { dataSheet }: SheetCladding): number[] {
  const counts = new Map<string, { y: Interval; height: number }>();
  for (const { outline } of pieces) {
    const { y } = polygonBounds(outline);
    const key = `${y[0]} ${y[1]}`;
    const group = counts.get(key);
    if (group) group.height += y[1] - y[0];
    else counts.set(key, { y, height: y[1] - y[0] });
  }
  const leading: Interval[] = [];
  for (const { y } of [...counts.values()].sort((a, b) => b.height - a.height || a.y[0] - b.y[0])) {
    if (!leading.some((other) => overlaps(other, y))) leading.push(y);
  }
  return leading.flatMap((y) => evenRows(y, dataSheet)).sort((a, b) => a - b);
}

/** Heights of the rows in one stretch of a sheet, from its lower to its upper edge (mm). */
export function rowsWithin(
  stretch: Interval,
  { dataSheet }: SheetCladding,
  levels: readonly number[],
): number[] {
  const even = evenRows(stretch, dataSheet);
  if (even.length < 2) return even;
  const [least, most] = dataSheet.fixingSpacing;
  const [first, last] = [even[0] as number, even.at(-1) as number];
  const marks = [first];
  for (const level of levels) {
    if (level - (marks.at(-1) as number) >= least && last - level >= least) marks.push(level);
  }
  marks.push(last);
  const rows = marks.flatMap((to, i): number[] => {
    const from = marks[i - 1];
    return from === undefined ? [to] : divided([from, to], most);
  });
  return rows.length <= even.length + MORE_ROWS ? rows : even;
}

function evenRows([from, to]: Interval, { edgeDistance, fixingSpacing }: DataSheet): number[] {
  const length = to - from;
  if (length < 2 * edgeDistance[0]) return [];
  const inset = Math.min(Math.max(ROW_FROM_EDGE_MM, edgeDistance[0]), edgeDistance[1], length / 2);
  if (length <= 2 * edgeDistance[1] - 1e-9 && length < 2 * inset + 2 * edgeDistance[0])
    return [(from + to) / 2];
  const [first, last] = [from + inset, to - inset];
  return [first, ...divided([first, last], fixingSpacing[1])];
}

/** Even steps of no more than `most` from the start, which is left out, to the end. */
function divided([from, to]: Interval, most: number): number[] {
  const gaps = Math.max(1, Math.ceil((to - from) / most - 1e-9));
  const rows: number[] = [];
  for (let i = 1; i <= gaps; i++) rows.push(from + ((to - from) * i) / gaps);
  return rows;
}
