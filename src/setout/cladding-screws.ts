/** Screws of sheets and boards: on which batten, at what height, and which of a sheet's is the fixed point. */
import { common, type Interval, overlaps, subtractIntervals } from "../geometry/interval.ts";
import { distance, type Point } from "../geometry/point.ts";
import { polygonBounds, sliceVertical } from "../geometry/polygon.ts";
import type { Rect } from "../geometry/rect.ts";
import type { BoardCladding, SheetCladding } from "../project/schema/project.ts";
import { snap } from "../units/length.ts";
import type { DraftBatten } from "./battens.ts";
import type { DraftPiece } from "./draft.ts";
import { screwLine, usableWidth } from "./sheets/screw-line.ts";
import { rowsWithin } from "./sheets/screw-rows.ts";

export interface CladdingPoint {
  readonly x: number;
  readonly y: number;
  readonly batten: DraftBatten;
}

/** A screw keeps this from a batten's sawn end, so that it does not split it. */
const FROM_BATTEN_END_MM = 10;

/** The strips that battens fill, left to right, each with its lengths from the bottom up. */
export interface BattenLine {
  readonly x: Interval;
  readonly battens: readonly DraftBatten[];
}

/** Gathers a zone's battens into lines, once for all its pieces. */
export function battenLines(battens: readonly DraftBatten[]): BattenLine[] {
  const lines = new Map<number, Map<number, DraftBatten[]>>();
  for (const batten of battens) {
    const [from, to] = batten.x;
    const starting = lines.get(from) ?? new Map<number, DraftBatten[]>();
    lines.set(from, starting);
    const line = starting.get(to);
    if (line) line.push(batten);
    else starting.set(to, [batten]);
  }
  const all = [...lines.values()].flatMap((starting) => [...starting.values()]);
  return all
    .map((line): BattenLine => ({ x: (line[0] as DraftBatten).x, battens: line }))
    .sort((a, b) => a.x[0] - b.x[0] || a.x[1] - b.x[1]);
}

/** The lines behind a piece, each with the lengths that it crosses. */
function linesBehind(box: Rect, lines: readonly BattenLine[]): BattenLine[] {
  const behind: BattenLine[] = [];
  for (const { x, battens } of lines) {
    if (!overlaps(x, box.x)) continue;
    const crossed = battens.filter(({ y }) => overlaps(y, box.y));
    if (crossed.length > 0) behind.push({ x, battens: crossed });
  }
  return behind;
}

/** The heights at x that lie in the piece, its holes taken out. */
function heightsAt(piece: DraftPiece, x: number): Interval[] {
  const outside = sliceVertical(piece.outline, x);
  if (piece.holes.length === 0) return outside;
  const holes = piece.holes.flatMap((hole) => sliceVertical(hole, x));
  return outside.flatMap((height) => subtractIntervals(height, holes));
}

function battenAt(battens: readonly DraftBatten[], y: number): DraftBatten | undefined {
  return battens.find(
    ({ y: [from, to] }) => y >= from + FROM_BATTEN_END_MM - 1e-9 && y <= to - FROM_BATTEN_END_MM + 1e-9,
  );
}

/** The nearest height on a batten, where the wished one falls on the end of a length. */
function ontoBatten(
  battens: readonly DraftBatten[],
  y: number,
  within: Interval,
): { y: number; batten: DraftBatten } | undefined {
  const direct = battenAt(battens, y);
  if (direct) return { y: snap(y), batten: direct };
  const places = battens
    .flatMap((batten) => {
      const span = common(within, [batten.y[0] + FROM_BATTEN_END_MM, batten.y[1] - FROM_BATTEN_END_MM]);
      return span ? [{ y: snap(Math.min(Math.max(y, span[0]), span[1])), batten }] : [];
    })
    .sort((a, b) => Math.abs(a.y - y) - Math.abs(b.y - y));
  return places[0];
}

export function sheetPoints(
  piece: DraftPiece,
  cladding: SheetCladding,
  { battens, levels }: { readonly battens: readonly BattenLine[]; readonly levels: readonly number[] },
): CladdingPoint[] {
  const box = polygonBounds(piece.outline);
  const { edgeDistance } = cladding.dataSheet;
  const [edgeMin] = edgeDistance;
  const lines = linesBehind(box, battens);
  const points: CladdingPoint[] = [];
  lines.forEach((line, i) => {
    const outermost = i === 0 ? "left" : i === lines.length - 1 ? "right" : undefined;
    const at = screwLine({ batten: line.x, sheet: box.x, outermost, edgeDistance });
    if (at === undefined) return;
    for (const height of heightsAt(piece, at)) {
      const within: Interval = [height[0] + edgeMin, height[1] - edgeMin];
      for (const y of rowsWithin(height, cladding, levels)) {
        const place = ontoBatten(line.battens, y, within);
        if (place) points.push({ x: at, y: place.y, batten: place.batten });
      }
    }
  });
  return points;
}

/** The screw nearest to the middle of the sheet is its fixed point; ties go to the lower, then the left one. */
export function fixedPoint(piece: DraftPiece, points: readonly CladdingPoint[]): CladdingPoint | undefined {
  const { x, y } = polygonBounds(piece.outline);
  const middle: Point = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2];
  let nearest: CladdingPoint | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const point of points) {
    const away = distance([point.x, point.y], middle);
    if (nearest && (away > least || (away === least && !isLower(point, nearest)))) continue;
    nearest = point;
    least = away;
  }
  return nearest;
}

function isLower(a: CladdingPoint, b: CladdingPoint): boolean {
  return a.y < b.y || (a.y === b.y && a.x < b.x);
}

export function boardPoints(
  piece: DraftPiece,
  cladding: BoardCladding,
  battens: readonly BattenLine[],
): CladdingPoint[] {
  const box = polygonBounds(piece.outline);
  const end = cladding.endDistance.value;
  const edge = cladding.edgeDistance.value;
  const points: CladdingPoint[] = [];
  for (const line of linesBehind(box, battens)) {
    const x = common(usableWidth(line.x), [box.x[0] + end, box.x[1] - end]);
    if (!x) continue;
    const middle = (line.x[0] + line.x[1]) / 2;
    const at = snap(Math.min(Math.max(middle, x[0]), x[1]));
    for (const [from, to] of heightsAt(piece, at)) {
      const width = to - from;
      if (width < 2 * edge) continue;
      const two = width >= cladding.twoScrewsFrom.value && width >= 4 * edge;
      const first = ontoBatten(line.battens, two ? from + width / 4 : (from + to) / 2, [
        from + edge,
        to - edge,
      ]);
      if (first) points.push({ x: at, y: first.y, batten: first.batten });
      const second = two && ontoBatten(line.battens, to - width / 4, [from + edge, to - edge]);
      // On a short batten two screws may be pushed onto one another: one holds as well.
      if (second && !(first && Math.abs(first.y - second.y) < edge))
        points.push({ x: at, y: second.y, batten: second.batten });
    }
  }
  return points;
}
