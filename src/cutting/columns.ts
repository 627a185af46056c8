/**
 * Column generation: which patterns, each as often as a fraction says, cover the pieces at least cost (Gilmore & Gomory,
 * Operations Research 9 (1961) 849-859 and 13 (1965) 94-120). Patterns come from an exact reckoning of the most that pieces
 * on one sheet or bar can be worth; so any prices at all give a bound on the cost of every plan (Farley, Operations Research 38
 * (1990) 922-923; with limited stock by Lagrange). Prices are smoothed towards the best so far (Wentges, International
 * Transactions in Operational Research 4 (1997) 151-162).
 */
import { CoveringLp } from "./covering-lp.ts";

export interface Pattern {
  /** Place of the stock that it is cut from. */
  readonly stock: number;
  readonly counts: ReadonlyMap<number, number>;
}

export interface PricedPattern extends Pattern {
  readonly worth: number;
}

/** What is known beforehand of a job that is the rest of another. */
interface Start {
  readonly lp: CoveringLp;
  readonly patterns: readonly (Pattern | undefined)[];
}

export interface ColumnJob {
  /** Pieces of each type. */
  readonly demand: readonly number[];
  readonly stock: readonly { readonly cost: number; readonly count: number }[];
  /**
   * The most that pieces from one of each stock can be worth, in whole numbers, and a pattern worth that. Undefined where that
   * is too much to reckon: then there is no bound but what is known.
   */
  readonly best: (worth: Float64Array) => readonly PricedPattern[] | undefined;
}

/** Whole numbers that the dearest sheet or bar is worth: a power of two, so that no price is rounded but once. */
const WHOLE = 2 ** 24;
/** What a piece costs that no pattern covers, in dearest sheets or bars. */
const PENALTY = 40;
const SMOOTH = 0.6;

export class Columns {
  private readonly job: ColumnJob;
  private readonly dearest: number;
  /** By the programme's column; undefined for those that were withdrawn. */
  private readonly patterns: (Pattern | undefined)[];
  private readonly lp: CoveringLp;
  /** What the programme had taken when it was taken over. */
  private readonly before: number;
  /** By stock: the row that limits it, -1 where there is no limit. */
  private readonly limits: readonly number[];
  private bestPrices: Float64Array | undefined;
  private lower = 0;
  private isDone = false;

  constructor(job: ColumnJob, start?: Start) {
    this.job = job;
    this.dearest = job.stock.reduce((most, { cost }) => Math.max(most, cost), 0) || 1;
    const types = job.demand.length;
    let row = types;
    this.limits = job.stock.map(({ count }) => (Number.isFinite(count) ? row++ : -1));
    this.patterns = [...(start?.patterns ?? [])];
    this.lp =
      start?.lp ??
      new CoveringLp(
        [
          ...job.demand.map((amount) => ({ sense: 1 as const, amount })),
          ...job.stock.flatMap(({ count }) =>
            Number.isFinite(count) ? [{ sense: -1 as const, amount: count }] : [],
          ),
        ],
        PENALTY,
      );
    this.before = this.lp.spent;
  }

  /**
   * The same for what is left of the job, begun from what is known here. `within` gives a pattern without the pieces that are no
   * longer wanted, itself where it has none.
   */
  forRest(rest: ColumnJob, within: (pattern: Pattern) => Pattern): Columns {
    const withdrawn: number[] = [];
    const cut: Pattern[] = [];
    const patterns = this.patterns.map((pattern, place) => {
      if (pattern === undefined) return undefined;
      const own = within(pattern);
      if (own === pattern) return pattern;
      withdrawn.push(place);
      cut.push(own);
      return undefined;
    });
    const amounts = [
      ...rest.demand,
      ...rest.stock.flatMap(({ count }) => (Number.isFinite(count) ? [count] : [])),
    ];
    const columns = new Columns(rest, { lp: this.lp.forAmounts(amounts, withdrawn), patterns });
    columns.offer(cut);
    return columns;
  }

  /** What no plan costs less than, as far as is known. */
  get bound(): number {
    return this.lower * this.dearest;
  }

  /** Sums that the programme took so far; the patterns' own are not among them. */
  get spent(): number {
    return this.lp.spent - this.before;
  }

  /** What the patterns cost that cover all pieces by fractions; undefined while they do not. */
  get value(): number | undefined {
    if (!this.lp.isCovered) return undefined;
    let value = 0;
    for (const { pattern, level } of this.solution()) {
      value += level * (this.job.stock[pattern.stock]?.cost ?? 0);
    }
    return value;
  }

  /** Patterns that are known beforehand. */
  offer(patterns: readonly Pattern[]): void {
    const distinct = new Map(patterns.map((pattern) => [keyOf(pattern), pattern]));
    for (const pattern of distinct.values()) this.add(pattern);
  }

  private add(pattern: Pattern): void {
    if (pattern.counts.size === 0) return;
    this.patterns.push(pattern);
    const limit = this.limits[pattern.stock] ?? -1;
    this.lp.add((this.job.stock[pattern.stock]?.cost ?? 0) / this.dearest, [
      ...pattern.counts,
      ...(limit < 0 ? [] : [[limit, 1] as const]),
    ]);
  }

  /**
   * One round: solves, in at most so many sums, prices, adds patterns that lower the cost. False when there are none: then the bound
   * is as good as it gets.
   */
  round(most: number): boolean {
    if (this.isDone) return false;
    const solved = this.lp.solve(most);
    const prices = this.lp.prices();
    const smooth = this.bestPrices;
    if (smooth !== undefined) {
      const between = prices.map((price, row) => SMOOTH * (smooth[row] ?? 0) + (1 - SMOOTH) * price);
      if (this.price(between, prices)) return true;
    }
    if (this.price(prices, prices)) return true;
    this.isDone = solved;
    return false;
  }

  /** The patterns in use, with how much of each. */
  solution(): { readonly pattern: Pattern; readonly level: number }[] {
    return [...this.lp.solution()].flatMap(([place, level]) => {
      const pattern = this.patterns[place];
      return pattern === undefined ? [] : [{ pattern, level }];
    });
  }

  /** Finds the best patterns at some prices and adds those that lower the cost at the programme's own. */
  private price(at: Float64Array, own: Float64Array): boolean {
    const { demand, stock } = this.job;
    const worth = Float64Array.from(demand, (_, type) => Math.floor((at[type] ?? 0) * WHOLE));
    const patterns = this.job.best(worth);
    if (patterns === undefined) return false;
    const lower = this.lagrange(worth, patterns);
    if (this.bestPrices === undefined || lower > this.lower) {
      this.bestPrices = Float64Array.from(at);
      this.lower = Math.max(this.lower, lower);
    }
    let added = false;
    for (const pattern of patterns) {
      const limit = this.limits[pattern.stock] ?? -1;
      let reduced = (stock[pattern.stock]?.cost ?? 0) / this.dearest - (limit < 0 ? 0 : (own[limit] ?? 0));
      for (const [type, count] of pattern.counts) reduced -= count * (own[type] ?? 0);
      // No pattern that the programme has is worth more than it costs once it is solved, so this one is new.
      if (reduced >= -1e-6) continue;
      this.add(pattern);
      added = true;
    }
    return added;
  }

  /** What no plan costs less than at these worths: prices scaled so that no unlimited stock pays for itself, less what limited stock gains. */
  private lagrange(worth: Float64Array, patterns: readonly PricedPattern[]): number {
    const { demand, stock } = this.job;
    const most = stock.map(() => 0);
    for (const { stock: place, worth: value } of patterns) most[place] = value / WHOLE;
    const wanted = demand.reduce((sum, count, type) => sum + count * (worth[type] ?? 0), 0) / WHOLE;
    let scale = 1;
    stock.forEach(({ cost, count }, place) => {
      const value = most[place] ?? 0;
      if (count === Number.POSITIVE_INFINITY && value > 0) {
        scale = Math.min(scale, cost / this.dearest / value);
      }
    });
    return stock.reduce((sum, { cost, count }, place) => {
      const gain = scale * (most[place] ?? 0) - cost / this.dearest;
      return count === Number.POSITIVE_INFINITY || gain <= 0 ? sum : sum - count * gain;
    }, scale * wanted);
  }
}

function keyOf({ stock, counts }: Pattern): string {
  return `${stock}:${[...counts].sort(([a], [b]) => a - b).join(";")}`;
}
