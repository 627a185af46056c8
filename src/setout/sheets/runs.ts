/**
 * The rows of one stretch of a column that no opening interrupts. The stretch is parted at every forced line; what lies
 * between and is higher than the stock is parted further, exactly: a shortest path over the level lines, set against
 * equal divisions.
 */
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import { divide } from "./divide.ts";
import type { LevelLine } from "./levels.ts";
import { isForbidden } from "./pins.ts";
import type { Planner } from "./planner.ts";
import { type PieceFacts, pieceCost, WEIGHTS } from "./score.ts";
import { fitsShape } from "./shapes.ts";

export interface ColumnStrip {
  readonly width: number;
  readonly tallest: number;
  /** Heights of the openings that cut into the column without spanning it. */
  readonly cutInto: readonly Interval[];
}

export interface Run {
  /** Heights of the sheets, from the bottom up. */
  readonly rows: readonly Interval[];
  readonly total: number;
}

const NOTHING: Run = { rows: [], total: 0 };
const MOST_EXTRA_ROWS = 1;

export function cheapestRun(planner: Planner, column: ColumnStrip, part: Interval): Run {
  let run = NOTHING;
  for (const { y, cost } of segmentsOf(planner, part)) {
    run = joined(run, cheapestSegment(planner, column, y), cost);
  }
  return run;
}

/**
 * Every run with as few rows as fit between forced lines, or one more; the cheapest alone where none fits.
 * @param keep what could serve of the ways to part a segment: without it their products grow past all bounds
 * @param limit what costs as much may be left out
 */
export function everyRun(
  planner: Planner,
  column: ColumnStrip,
  {
    part,
    keep,
    limit,
  }: { readonly part: Interval; readonly keep: (runs: readonly Run[]) => Run[]; readonly limit: number },
): Run[] {
  let runs = [NOTHING];
  for (const { y, cost } of segmentsOf(planner, part)) {
    const next = keep(everySegment(planner, column, { y, limit }));
    runs = keep(runs.flatMap((run) => next.map((other) => joined(run, other, cost))));
  }
  return runs;
}

function joined(below: Run, above: Run, jointCost: number): Run {
  if (below.rows.length === 0) return above;
  return { rows: [...below.rows, ...above.rows], total: below.total + jointCost + above.total };
}

export function factsOf(
  { zone, shapes, module }: Planner,
  { width, cutInto }: ColumnStrip,
  [from, to]: Interval,
): PieceFacts {
  const height = to - from;
  let notches = 0;
  for (const [low, high] of cutInto) if (low < to && from < high) notches += 1;
  return { width, height, module, sliver: zone.sliver, notches, fits: fitsShape(shapes, { width, height }) };
}

export function rowCost(planner: Planner, column: ColumnStrip, y: Interval): number {
  return pieceCost(factsOf(planner, column, y));
}

function linesWithin({ levels, zone }: Planner, [from, to]: Interval): LevelLine[] {
  return levels.filter(({ at }) => at > from && snap(at + zone.cladding.joint) < to);
}

/** What lies between forced lines, each with the cost of the forced joint under it. */
function segmentsOf(planner: Planner, part: Interval): { y: Interval; cost: number }[] {
  const { joint } = planner.zone.cladding;
  const segments: { y: Interval; cost: number }[] = [];
  let [from] = part;
  let cost = 0;
  for (const line of planner.levels) {
    if (!line.forced || line.at <= from || snap(line.at + joint) >= part[1]) continue;
    segments.push({ y: [from, line.at], cost });
    from = snap(line.at + joint);
    cost = line.cost;
  }
  return [...segments, { y: [from, part[1]], cost }];
}

function cheapestSegment(planner: Planner, column: ColumnStrip, y: Interval): Run {
  const single: Run = { rows: [y], total: rowCost(planner, column, y) };
  // A single sheet that fits beats any parting: parts are smaller, and no fewer openings cut into them.
  if (!planner.divides || intervalLength(y) <= column.tallest) return single;
  const equal = equalRuns(planner, column, y).reduce((a, b) => (b.total < a.total ? b : a), single);
  return alongLines(planner, column, y, equal);
}

/** The cheapest run whose joints lie on lines, or `other` where none costs less. */
function alongLines(planner: Planner, column: ColumnStrip, y: Interval, other: Run): Run {
  const { joint } = planner.zone.cladding;
  const lines = linesWithin(planner, y);
  const totals: number[] = [0];
  const backs: number[] = [0];
  const start = (i: number): number => (i === 0 ? y[0] : snap((lines[i - 1] as LevelLine).at + joint));
  for (let j = 1; j <= lines.length + 1; j++) {
    const top = lines[j - 1]?.at ?? y[1];
    totals[j] = Number.POSITIVE_INFINITY;
    for (let i = 0; i < j; i++) {
      const from = start(i);
      const before = (totals[i] as number) + (lines[i - 1]?.cost ?? 0);
      const least = before + WEIGHTS.sheet + (top - from > column.tallest + 1e-9 ? WEIGHTS.oversize : 0);
      if (top <= from || least >= Math.min(totals[j] as number, other.total)) continue;
      const total = before + rowCost(planner, column, [from, top]);
      if (total < (totals[j] as number)) {
        totals[j] = total;
        backs[j] = i;
      }
    }
  }
  const total = totals[lines.length + 1] as number;
  if (total >= other.total - 1e-9) return other;
  const rows: Interval[] = [];
  for (let j = lines.length + 1; j > 0; j = backs[j] as number) {
    rows.unshift([start(backs[j] as number), lines[j - 1]?.at ?? y[1]]);
  }
  return { rows, total };
}

function fewestRows({ zone }: Planner, { tallest }: ColumnStrip, y: Interval): number {
  const { joint } = zone.cladding;
  return Math.max(1, Math.ceil((intervalLength(y) + joint) / (tallest + joint) - 1e-9));
}

function equalRuns(planner: Planner, column: ColumnStrip, y: Interval): Run[] {
  const fewest = fewestRows(planner, column, y);
  return [fewest, fewest + MOST_EXTRA_ROWS].flatMap((parts) => {
    const rows = divide(y, parts, planner.zone.cladding.joint);
    const strips = rows.slice(1).map((row, i): Interval => [(rows[i] as Interval)[1], row[0]]);
    if (strips.some((strip) => isForbidden(strip, planner.wishes.forbidden.y))) return [];
    const pieces = rows.reduce((sum, row) => sum + rowCost(planner, column, row), 0);
    return [{ rows, total: pieces + strips.length * WEIGHTS.offLine }];
  });
}

function everySegment(
  planner: Planner,
  column: ColumnStrip,
  { y, limit }: { readonly y: Interval; readonly limit: number },
): Run[] {
  const { joint } = planner.zone.cladding;
  const most = fewestRows(planner, column, y) + MOST_EXTRA_ROWS;
  const lines = linesWithin(planner, y);
  const found: Run[] = [];
  const climb = (rows: readonly Interval[], total: number, from: number, next: number): void => {
    if (y[1] - from <= column.tallest) {
      const top: Interval = [from, y[1]];
      found.push({ rows: [...rows, top], total: total + rowCost(planner, column, top) });
    }
    if (rows.length + 1 >= most || total >= limit) return;
    for (let k = next; k < lines.length; k++) {
      const { at, cost } = lines[k] as LevelLine;
      if (at <= from) continue;
      if (at - from > column.tallest) break;
      const row: Interval = [from, at];
      climb([...rows, row], total + rowCost(planner, column, row) + cost, snap(at + joint), k + 1);
    }
  };
  climb([], 0, y[0], 0);
  const all = [...found, ...equalRuns(planner, column, y)];
  return all.length > 0 ? all : [cheapestSegment(planner, column, y)];
}

/** What a joint at a line costs; one on no line comes from an equal division. */
export function costOfCut({ levels }: Planner, cut: number): number {
  return levels.find(({ at }) => at === cut)?.cost ?? WEIGHTS.offLine;
}
