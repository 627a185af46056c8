/**
 * Whole bars from patterns used by fractions: those used once or more are kept, then the one used most, and the rest is solved
 * anew; where that leads to nothing better than what is known, the next is tried instead, so many times in all. Diving with
 * limited discrepancies: Sadykov, Vanderbeck, Pessoa, Tahiri & Uchoa, INFORMS J. Computing 31 (2019) 251-267.
 */
import type { BarType, FilledBar, Filling, Piece } from "./bar-fill.ts";
import { bestFit, fullestBars } from "./bar-fill.ts";
import type { BarPattern, BarWorth } from "./bar-worth.ts";
import { barWorth, summed } from "./bar-worth.ts";
import { type ColumnJob, Columns, type Pattern } from "./columns.ts";
import type { Cover } from "./cover.ts";
import { coverOf } from "./cover.ts";

export interface BarJob {
  readonly pieces: readonly Piece[];
  readonly types: readonly BarType[];
  /** By stock number. */
  readonly available: readonly number[];
  readonly unit: number;
}

export interface Dive {
  readonly bound: number;
  /** A filling that costs less than the goal, if one was found. */
  readonly better?: Filling;
  readonly rounds: number;
}

/** What is left to cut at some point of a dive. */
interface Rest {
  readonly demand: readonly number[];
  readonly counts: readonly number[];
  readonly chosen: readonly BarPattern[];
  readonly cost: number;
}

/** Sums of a linear programme that take as long as an entry of a list. */
const SUMS_AN_ENTRY = 160;
/** How often, along one dive, another pattern than the first may be taken. */
const DISCREPANCIES = 2;
/** Pieces left, above which filling bar by bar takes longer than it helps. */
const MOST_TO_FILL = 60;

interface Measure {
  /** Cost of a plan that is known. */
  readonly goal: number;
  /** What none costs less than, as far as is known. */
  readonly bound: number;
  /** How many entries of lists may be made in all. */
  readonly work: number;
  /** Bars that may be of use. */
  readonly bars: readonly FilledBar[];
}

/** Gives what it has after each round. */
export function dive(job: BarJob, measure: Measure): Generator<Dive, Dive> {
  const lengths = new Map<string, Piece[]>();
  for (const piece of job.pieces) {
    const key = `${piece.length} ${piece.kind}`;
    const same = lengths.get(key);
    if (same === undefined) lengths.set(key, [piece]);
    else same.push(piece);
  }
  const groups = [...lengths.values()];
  const kinds = groups.map(([first]) => ({ length: first?.length ?? 0, kind: first?.kind ?? 0 }));
  return new Diver(job, groups, barWorth(kinds, job.types, job.unit), measure).run();
}

class Diver {
  private readonly job: BarJob;
  private readonly groups: readonly (readonly Piece[])[];
  private readonly known: readonly BarPattern[];
  private readonly worths: BarWorth;
  private readonly cover: Cover;
  private goal: number;
  private readonly work: number;
  private rounds = 0;
  private pivoted = 0;
  private bound: number;
  private better: Filling | undefined;

  constructor(job: BarJob, groups: Piece[][], worths: BarWorth, measure: Measure) {
    const { goal, bound, work, bars } = measure;
    this.job = job;
    this.groups = groups;
    this.known = patternsOf(bars, groups, job.types);
    this.worths = worths;
    this.goal = goal;
    this.bound = bound;
    this.work = work;
    this.cover = coverOf(job.types.map(({ cost, stock }) => ({ cost, count: job.available[stock] ?? 0 })));
  }

  *run(): Generator<Dive, Dive> {
    const all = {
      demand: this.groups.map((group) => group.length),
      counts: this.job.types.map(({ stock }) => this.job.available[stock] ?? 0),
      chosen: [],
      cost: 0,
    };
    const begun = new Columns(this.columnJob(all));
    begun.offer(this.known);
    const columns = yield* this.solved(all, begun);
    this.bound = Math.max(this.bound, this.cover.roundUp(columns.bound));
    if (columns.value !== undefined) {
      for (let tries = 0; tries <= DISCREPANCIES && !this.isOver; tries++) {
        yield* this.descend(all, columns, tries);
      }
    }
    return this.now();
  }

  private now(): Dive {
    return {
      bound: this.bound,
      rounds: this.rounds,
      ...(this.better === undefined ? {} : { better: this.better }),
    };
  }

  /** What may still be spent, in entries of lists. */
  private get left(): number {
    return this.work - this.worths.spent - this.pivoted;
  }

  private get isOver(): boolean {
    return this.left <= 0 || this.bound >= this.goal - 1e-9;
  }

  private columnJob({ demand, counts }: Rest): ColumnJob {
    return {
      demand,
      stock: this.job.types.map(({ cost }, place) => ({ cost, count: counts[place] ?? 0 })),
      best: (worth) => this.worths.best(worth, demand),
    };
  }

  private *solved(rest: Rest, columns: Columns): Generator<Dive, Columns> {
    let before = 0;
    while (this.left > 0) {
      const more = columns.round(this.left * SUMS_AN_ENTRY);
      this.pivoted += (columns.spent - before) / SUMS_AN_ENTRY;
      before = columns.spent;
      if (!more) break;
      this.rounds += 1;
      yield this.now();
      // Nothing better than what is known can come of it, or nothing better can be asked for.
      if (this.cover.roundUp(columns.bound) + rest.cost >= this.goal - 1e-9) break;
      const { value } = columns;
      if (value !== undefined && this.cover.roundUp(value - 1e-9) + rest.cost <= this.bound + 1e-9) break;
    }
    return columns;
  }

  /** Takes patterns until nothing is left; `strays` is how often the second best may be taken on the way. */
  private *descend(rest: Rest, columns: Columns, strays: number): Generator<Dive, void> {
    if (this.isOver || this.cover.roundUp(columns.bound) + rest.cost >= this.goal - 1e-9) return;
    const used = columns.solution().map(({ pattern, level }) => ({ pattern: pattern as BarPattern, level }));
    let next = rest;
    for (const { pattern, level } of used) {
      for (let count = Math.floor(level + 1e-6); count > 0; count--) next = this.take(next, pattern);
    }
    if (next === rest) {
      const ranked = used
        .filter(({ level }) => level > 1e-6)
        .sort((a, b) => b.level - a.level || b.pattern.counts.size - a.pattern.counts.size);
      const choices = ranked.slice(0, 1 + strays);
      for (const [place, { pattern }] of choices.entries()) {
        if (place > 0 && this.isOver) return;
        const one = this.take(rest, pattern);
        if (one !== rest) yield* this.follow(one, columns, strays - place);
      }
      return;
    }
    yield* this.follow(next, columns, strays);
  }

  private *follow(rest: Rest, columns: Columns, strays: number): Generator<Dive, void> {
    this.complete(rest);
    if (rest.demand.every((count) => count === 0)) return;
    const own = columns.forRest(this.columnJob(rest), cutTo(rest));
    yield* this.descend(rest, yield* this.solved(rest, own), strays);
  }

  private take(rest: Rest, pattern: BarPattern): Rest {
    const cut = within(pattern, rest);
    if (cut.counts.size === 0 || (rest.counts[cut.stock] ?? 0) <= 0) return rest;
    return {
      demand: rest.demand.map((count, type) => count - (cut.counts.get(type) ?? 0)),
      counts: rest.counts.map((count, place) => count - (place === cut.stock ? 1 : 0)),
      chosen: [...rest.chosen, cut],
      cost: rest.cost + (this.job.types[cut.stock]?.cost ?? 0),
    };
  }

  /** Fills bars with what is left, and keeps the whole if it is better than what is known. */
  private complete(rest: Rest): void {
    const pieces = this.groups.flatMap((group, type) => group.slice(group.length - (rest.demand[type] ?? 0)));
    pieces.sort((a, b) => b.length - a.length || a.demand - b.demand);
    const available = [...this.job.available];
    for (const { stock } of rest.chosen) {
      const place = this.job.types[stock]?.stock ?? -1;
      available[place] = (available[place] ?? 0) - 1;
    }
    for (const fill of pieces.length > MOST_TO_FILL ? [bestFit] : [bestFit, fullestBars]) {
      const filling = fill({ ...this.job, pieces, available, price: ({ cost }) => cost });
      const cost = rest.cost + filling.bars.reduce((sum, { type }) => sum + type.cost, 0);
      if (filling.left.length > 0 || cost >= this.goal - 1e-9) continue;
      this.goal = cost;
      this.better = { bars: [...this.filled(rest), ...filling.bars], left: [] };
    }
  }

  private filled(rest: Rest): FilledBar[] {
    const taken = this.groups.map(() => 0);
    return rest.chosen.flatMap((pattern): FilledBar[] => {
      const type = this.job.types[pattern.stock];
      if (type === undefined) return [];
      const pieces = pattern.runs.map((run) =>
        [...run].flatMap(([group, count]) => {
          const from = taken[group] ?? 0;
          taken[group] = from + count;
          return (this.groups[group] ?? []).slice(from, from + count);
        }),
      );
      return [{ type, pieces }];
    });
  }
}

function cutTo(rest: Rest): (pattern: Pattern) => Pattern {
  return (pattern) => within(pattern as BarPattern, rest);
}

/** A pattern without the pieces that are no longer wanted. */
function within(pattern: BarPattern, { demand }: Rest): BarPattern {
  let isWanted = true;
  for (const [type, count] of pattern.counts) isWanted &&= count <= (demand[type] ?? 0);
  if (isWanted) return pattern;
  const left = [...demand];
  const runs = pattern.runs.map((run) => {
    const kept = new Map<number, number>();
    for (const [type, count] of run) {
      const own = Math.min(count, left[type] ?? 0);
      if (own > 0) kept.set(type, own);
      left[type] = (left[type] ?? 0) - own;
    }
    return kept;
  });
  return { ...pattern, runs, counts: summed(runs) };
}

function patternsOf(
  bars: readonly FilledBar[],
  groups: readonly (readonly Piece[])[],
  types: readonly BarType[],
): BarPattern[] {
  const groupOf = new Map(groups.flatMap((group, place) => group.map((piece) => [piece, place] as const)));
  return bars.map(({ type, pieces }) => {
    const runs = pieces.map((run) => {
      const counts = new Map<number, number>();
      for (const piece of run) {
        const group = groupOf.get(piece) ?? -1;
        counts.set(group, (counts.get(group) ?? 0) + 1);
      }
      return counts;
    });
    return { stock: types.indexOf(type), worth: 0, runs, counts: summed(runs) };
  });
}
