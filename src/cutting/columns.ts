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
  private readonly patterns: Pattern[] = [];
  private readonly known = new Set<string>();
  private readonly lp: CoveringLp;
  /** By stock: the row that limits it, -1 where there is no limit. */
  private readonly limits: readonly number[];
  private bestPrices: Float64Array | undefined;
  private lower = 0;
  private isDone = false;

  constructor(job: ColumnJob) {
    this.job = job;
    this.dearest = job.stock.reduce((most, { cost }) => Math.max(most, cost), 0) || 1;
    const types = job.demand.length;
    let row = types;
    this.limits = job.stock.map(({ count }) => (Number.isFinite(count) ? row++ : -1));
    this.lp = new CoveringLp(
      [
        ...job.demand.map((amount) => ({ sense: 1 as const, amount })),
        ...job.stock.flatMap(({ count }) =>
          Number.isFinite(count) ? [{ sense: -1 as const, amount: count }] : [],
        ),
      ],
      PENALTY,
    );
  }

  /** What no plan costs less than, as far as is known. */
  get bound(): number {
    return this.lower * this.dearest;
  }

  /** Sums that the programme took so far; the patterns' own are not among them. */
  get spent(): number {
    return this.lp.spent;
  }

  /** True once no pattern can lower the cost any more. */
  get done(): boolean {
    return this.isDone;
  }

  /** Patterns cover all pieces, if only by fractions. */
  get covered(): boolean {
    return this.lp.isCovered;
  }

  /** What the patterns cost that cover all pieces by fractions. */
  get value(): number {
    return [...this.lp.solution()].reduce(
      (sum, [place, level]) => sum + level * (this.job.stock[this.patterns[place]?.stock ?? -1]?.cost ?? 0),
      0,
    );
  }

  add(pattern: Pattern): boolean {
    const key = `${pattern.stock}:${[...pattern.counts].sort(([a], [b]) => a - b).join(";")}`;
    if (this.known.has(key) || pattern.counts.size === 0) return false;
    this.known.add(key);
    this.patterns.push(pattern);
    const limit = this.limits[pattern.stock] ?? -1;
    this.lp.add({
      cost: (this.job.stock[pattern.stock]?.cost ?? 0) / this.dearest,
      entries: [...pattern.counts, ...(limit < 0 ? [] : [[limit, 1] as const])],
    });
    return true;
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

  /** All patterns found so far. */
  all(): readonly Pattern[] {
    return this.patterns;
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
      if (reduced < -1e-6 && this.add(pattern)) added = true;
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
