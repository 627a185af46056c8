/** The storey rod by trying every row of boards: slow, plain, and sharing no code with the solver. Whole or half millimetres only. */
import type { RodProblem } from "../../src/setout/rod/index.ts";

export interface TriedRod {
  readonly rows: readonly (readonly number[])[];
  readonly missed: number;
  readonly spread: number;
  readonly offset: number;
  readonly boards: number;
  readonly repeats: number;
}

interface TriedRow {
  readonly widths: readonly number[];
  readonly gap: number;
  readonly met: readonly string[];
}

const toGrid = (mm: number): number => Math.round(mm * 8000) / 8000;

function tryRows(problem: RodProblem, index: number): TriedRow[] {
  const segment = problem.segments[index]!;
  const [min, max] = problem.gapBand;
  const odd = (problem.ripped ?? []).find((board) => board.segment === segment.id)?.width;
  const length = segment.to - segment.from;
  const rows: TriedRow[] = [];
  const lay = (row: readonly number[], timber: number): void => {
    if (timber > length) return;
    const gaps = row.length - 1 + Number(segment.gapAtStart) + Number(segment.gapAtEnd);
    const spare = length - timber;
    const hasOdd = odd === undefined || row.includes(odd);
    if (row.length > 0 && hasOdd && spare >= min * gaps && spare <= max * gaps) {
      rows.push({
        widths: row,
        gap: gaps === 0 ? Number.NaN : spare / gaps,
        met: linesMet(problem, index, row, gaps, spare),
      });
    }
    for (const width of problem.widths) lay([...row, width], timber + width);
    if (odd !== undefined && !row.includes(odd)) lay([...row, odd], timber + odd);
  };
  lay([], 0);
  return rows.filter(
    (row) => longestRun(row.widths) <= (problem.maxEqualTouching ?? Number.POSITIVE_INFINITY),
  );
}

function linesMet(
  problem: RodProblem,
  index: number,
  row: readonly number[],
  gaps: number,
  spare: number,
): string[] {
  const segment = problem.segments[index]!;
  const met: string[] = [];
  let at = segment.from + (segment.gapAtStart ? spare / gaps : 0);
  for (const width of row) {
    const start = toGrid(at);
    const end = toGrid(at + width);
    for (const line of problem.secondaryLines) {
      if (line.edge === "end-of-board" && end <= line.at && end >= line.at - line.tolerance)
        met.push(line.id);
      if (line.edge === "start-of-board" && start >= line.at && start <= line.at + line.tolerance)
        met.push(line.id);
    }
    at += width + (gaps === 0 ? 0 : spare / gaps);
  }
  return met;
}

function longestRun(row: readonly number[]): number {
  let longest = 0;
  for (let first = 0; first < row.length; first += 1) {
    let next = first;
    while (row[next] === row[first] && next < row.length) next += 1;
    longest = Math.max(longest, next - first);
  }
  return longest;
}

/** Places where one, two or three boards come again right after themselves. */
function countRepeats(row: readonly number[]): number {
  let repeats = 0;
  for (const period of [1, 2, 3]) {
    for (let first = 0; first + 2 * period <= row.length; first += 1) {
      const one = row.slice(first, first + period).join();
      if (one === row.slice(first + period, first + 2 * period).join()) repeats += 1;
    }
  }
  return repeats;
}

/** Every rod that keeps the hard rules. */
export function everyRod(problem: RodProblem): TriedRod[] {
  const options = problem.segments.map((_, index) => tryRows(problem, index));
  const [min, max] = problem.gapBand;
  const preferred = problem.preferredGap ?? (min + max) / 2;
  const rods: TriedRod[] = [];
  const combine = (rows: readonly TriedRow[]): void => {
    if (rows.length < options.length) {
      for (const row of options[rows.length] ?? []) combine([...rows, row]);
      return;
    }
    const stretches: number[][] = [];
    rows.forEach((row, index) => {
      if (index > 0 && problem.segments[index]!.from === problem.segments[index - 1]!.to)
        stretches.at(-1)!.push(...row.widths);
      else stretches.push([...row.widths]);
    });
    if (
      stretches.some(
        (stretch) => longestRun(stretch) > (problem.maxEqualTouching ?? Number.POSITIVE_INFINITY),
      )
    )
      return;
    const gaps = rows.map((row) => row.gap).filter((gap) => !Number.isNaN(gap));
    const met = new Set(rows.flatMap((row) => row.met));
    rods.push({
      rows: rows.map((row) => row.widths),
      missed: problem.secondaryLines.length - met.size,
      spread: gaps.length === 0 ? 0 : Math.max(...gaps) - Math.min(...gaps),
      offset: gaps.reduce((sum, gap) => sum + Math.abs(gap - preferred), 0),
      boards: rows.reduce((sum, row) => sum + row.widths.length, 0),
      repeats: stretches.reduce((sum, stretch) => sum + countRepeats(stretch), 0),
    });
  };
  combine([]);
  return rods;
}

/** One rod per combination of counts, its best order first by lines and then by repeats; all in order of merit. */
export function bestOfEachCounts(problem: RodProblem): TriedRod[] {
  const best = new Map<string, TriedRod>();
  for (const rod of everyRod(problem)) {
    const key = rod.rows.map((row) => [...row].sort((a, b) => a - b).join(" ")).join("|");
    const rival = best.get(key);
    const isBetter =
      rival === undefined ||
      rod.missed < rival.missed ||
      (rod.missed === rival.missed && rod.repeats < rival.repeats);
    if (isBetter) best.set(key, rod);
  }
  return [...best.values()].sort(
    (one, other) =>
      one.missed - other.missed ||
      unlessEqual(one.spread, other.spread) ||
      unlessEqual(one.offset, other.offset) ||
      one.boards - other.boards,
  );
}

function unlessEqual(one: number, other: number): number {
  return Math.abs(one - other) < 1e-9 ? 0 : one - other;
}
